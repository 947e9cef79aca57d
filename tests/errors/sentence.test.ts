import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sentence, sentences } from '../../src/errors/sentence.js';

describe('a problem in words', () => {
  it('says where, what, what is allowed, and what to do', () =>
    expect(
      sentence({
        file: 'looks/attic.json',
        line: 7,
        field: 'projector.lamp',
        what: '"lantern" is not allowed',
        allowed: 'xenon, incandescent',
        hint: 'Did you mean "xenon"?',
      }),
    ).toBe(
      'looks/attic.json, line 7, projector.lamp: "lantern" is not allowed. Allowed: xenon, incandescent. Did you mean "xenon"?',
    ));

  it.each([
    [{ what: 'there is nothing' }, 'there is nothing.'],
    [{ file: 'a.cube', what: 'is empty' }, 'a.cube: is empty.'],
    [{ field: 'name', what: 'is missing' }, 'name: is missing.'],
    [{ file: 'a.cube', line: 1, what: 'stops' }, 'a.cube, line 1: stops.'],
  ])('leaves out what is not known: %j', (problem, words) => expect(sentence(problem)).toBe(words));
});

describe('an input error', () => {
  it('holds one problem or several, each a line of its own', () => {
    expect(new InputError({ what: 'a' }).problems).toEqual([{ what: 'a' }]);
    expect(sentences(new InputError([{ what: 'a' }, { file: 'f', what: 'b' }]))).toBe('a.\nf: b.');
  });

  it('is an Error that names itself', () => {
    const error = new InputError([{ what: 'a' }, { what: 'b' }]);
    expect(error).toBeInstanceOf(Error);
    expect(error.name).toBe('InputError');
    expect(error.message).toBe('a; b');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../src/look/json-fault.js';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const seed = 72;

describe('where JSON goes wrong', () => {
  it.each([
    ['', 0],
    ['{', 1],
    ['{"a":1', 6],
    ['{"a":1,}', 7],
    ['{"a" 1}', 5],
    ['{"a":1 "b":2}', 7],
    ["{'a':1}", 1],
    ['[1,,2]', 3],
    ['[1,2', 4],
    ['[1 2]', 3],
    ['{"a":x}', 5],
    ['// no\n{}', 0],
    ['{} {}', 3],
    ['{}]', 2],
    ['[1}', 2],
    ['"open', 5],
    ['"a\nb"', 2],
    ['"\\x"', 1],
    ['"\\u12g4"', 1],
    ['01', 1],
    ['+1', 0],
    ['1.', 1],
    ['-', 0],
    ['.5', 0],
    ['NaN', 0],
    ['tru', 0],
    ['True', 0],
    ['}', 0],
    ['{"a":}', 5],
    ['{,}', 1],
    ['[,]', 1],
    ['\u00a0{}', 0],
  ])('%j: at %s', (text, position) => expect(jsonFault(text)).toBe(position));

  it.each([
    '{}',
    '[]',
    ' null ',
    '-0.5e-3',
    '"\\u00e9\\n"',
    '{"a":[{},[],"",true,false,null]}',
    '\t[\r\n1 ]',
  ])('%j is JSON', (text) => expect(jsonFault(text)).toBeUndefined());

  it('agrees with the engine on every JSON', () =>
    fc.assert(
      fc.property(fc.json(), (text) => jsonFault(text) === undefined),
      { seed, numRuns: 1000 },
    ));

  it('agrees with the engine on JSON with one character put in, left out or changed', () => {
    let broken = 0;
    fc.assert(
      fc.property(
        fc.json({ maxDepth: 3 }),
        fc.nat(),
        fc.constantFrom(
          '',
          '"',
          ',',
          ':',
          '{',
          '}',
          '[',
          ']',
          '\\',
          '\n',
          '0',
          '-',
          'e',
          '.',
          ' ',
          'n',
          '\u0000',
        ),
        fc.boolean(),
        (text, where, sign, replace) => {
          const at = where % (text.length + 1);
          const changed = text.slice(0, at) + sign + text.slice(at + (replace ? 1 : 0));
          const fault = jsonFault(changed);
          if (fault !== undefined) broken++;
          return (fault === undefined) === isJson(changed) && (fault ?? 0) <= changed.length;
        },
      ),
      { seed, numRuns: 5000 },
    );
    expect(broken).toBeGreaterThan(500);
  });

  it('agrees with the engine on any text', () =>
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 30 }),
        (text) => (jsonFault(text) === undefined) === isJson(text),
      ),
      { seed, numRuns: 2000 },
    ));

  it('reads a million brackets and a string of a million signs without running out of stack', () => {
    expect(jsonFault('['.repeat(1e6))).toBe(1e6);
    expect(jsonFault('['.repeat(1e5) + ']'.repeat(1e5))).toBeUndefined();
    expect(jsonFault(`"${'a\\n'.repeat(1e6)}"`)).toBeUndefined();
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sentences } from '../../src/errors/sentence.js';
import { readLampFile } from '../../src/look/lamp-file.js';
import { lookJsonSchema } from '../../src/look/look-schema.js';
import { readLook } from '../../src/look/read-look.js';
import { type JsonSchema, spoilt, validValues } from '../look/json-schema.js';

const seed = 81;

/** What a reader says of a text; anything thrown but an InputError is a fault of ours and fails the test. */
function saidOf(read: () => unknown): string | undefined {
  try {
    read();
    return undefined;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return sentences(error);
  }
}

const readable = (text: string) => {
  const said = saidOf(() => readLook(text, 'found.json'));
  return said === undefined || (said.startsWith('found.json') && !/undefined|\[object/.test(said));
};

describe('a look file from anywhere', () => {
  it('random text gives words', () =>
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), readable), { seed, numRuns: 2000 }));

  it('random JSON gives words', () => fc.assert(fc.property(fc.json(), readable), { seed, numRuns: 2000 }));

  it('a look with one thing wrong gives words', () =>
    fc.assert(
      fc.property(
        validValues(lookJsonSchema() as JsonSchema)
          .chain(spoilt)
          .map((value) => JSON.stringify(value)),
        readable,
      ),
      { seed, numRuns: 2000 },
    ));

  it.each([
    ['lists a hundred thousand deep', '['.repeat(1e5) + ']'.repeat(1e5)],
    ['a name that is lists all the way', `{"name":${'['.repeat(1e5)}${']'.repeat(1e5)}}`],
    [
      'a section that is objects all the way',
      `{"name":"a","stock":${'{"stock":'.repeat(1e4)}1${'}'.repeat(1e4)}}`,
    ],
    ['a name of a million signs', `{"name":"${'a'.repeat(1e6)}"}`],
    ['a field of a million signs', `{"name":"a","${'b'.repeat(1e6)}":1}`],
    ['numbers beyond all bounds', '{"name":"a","print":{"contrast":1e999,"exposureStops":-1e999}}'],
    ['a prototype', '{"name":"a","__proto__":{"stock":{}},"constructor":1,"hasOwnProperty":2}'],
    ['signs that terminals obey', '{"name":"a","\\u001b]0;x\\u0007":1,"print":{"contrast":"\\u001b[2J"}}'],
    ['an unpaired surrogate', '{"name":"a","print":"\\ud800"}'],
    ['nothing but zero bytes', '\u0000'.repeat(100)],
  ])('%s', (_, text) => {
    const said = saidOf(() => readLook(text, 'found.json')) ?? '';
    expect(said).toMatch(/^found\.json/);
    // Nothing a terminal would obey, and no wall of text.
    for (const line of said.split('\n')) expect(line.length).toBeLessThan(600);
    // eslint-disable-next-line no-control-regex
    expect(said).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
  });
});

describe('a lamp file from anywhere', () => {
  const lines = fc.array(
    fc.oneof(
      fc.tuple(fc.integer({ min: 300, max: 800 }), fc.double()).map(([nm, power]) => `${nm},${power}`),
      fc.string(),
      fc.constantFrom('', '#', '400', '400,', ',1', '400;1', '400\t1', 'nm,power', '-1,-1', '4e2,1e400'),
    ),
    { maxLength: 40 },
  );

  it('gives a spectrum or words', () =>
    fc.assert(
      fc.property(lines, fc.constantFrom('\n', '\r\n', '\r'), (list, end) => {
        const said = saidOf(() => readLampFile(list.join(end), 'lamp.csv'));
        return said === undefined || said.startsWith('lamp.csv');
      }),
      { seed, numRuns: 2000 },
    ));
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubeNumbers } from '../../../../shared/check-values/cube-numbers.js';
import { scanNumber, scanRow } from '../../../../src/lut/formats/cube/number.js';

const bytesOf = (text: string) => new TextEncoder().encode(text);

/** The whole word as a number, NaN when reading stops before its end. */
function scan(word: string): number {
  const bytes = bytesOf(word);
  const cursor = { at: 0 };
  const value = scanNumber(bytes, cursor, bytes.length);
  return cursor.at === bytes.length ? value : NaN;
}

describe('a number', () => {
  it.each(cubeNumbers.numbers)('%s is what Number gives', (word) => {
    expect(scan(word)).toBe(Number(word));
  });

  it.each(cubeNumbers.others)('"%s" is none', (word) => {
    expect(Number.isFinite(scan(word))).toBe(false);
  });

  const digits = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: 20 });
  const fraction = fc.option(
    digits.map((part) => `.${part}`),
    { nil: '' },
  );
  const exponent = fc.tuple(fc.constantFrom('e', 'E'), fc.integer({ min: -330, max: 310 }));
  const power = fc.option(
    exponent.map((parts) => parts.join('')),
    { nil: '' },
  );
  const double = fc.double({ noNaN: true, noDefaultInfinity: true });
  it.each([
    [
      'by hand',
      fc.tuple(fc.constantFrom('', '-', '+'), digits, fraction, power).map((parts) => parts.join('')),
    ],
    ['in as few digits as will do', double.map(String)],
    ['in fifteen digits', double.map((value) => value.toExponential(14))],
  ])('written %s is what Number gives, to the last bit', (_, words) => {
    const equal = fc.property(words, (word) => void expect(scan(word)).toBe(Number(word)));
    fc.assert(equal, { seed: 77, numRuns: 5000 });
  });
});

describe('a row', () => {
  const row = (text: string) => {
    const out = new Float64Array(5).fill(9);
    const bytes = bytesOf(text);
    return scanRow(bytes, 0, bytes.length, out, 1) ? [...out] : false;
  };

  it.each(['1 2 3', '1\t2 \t 3', ' 1 2 3\t ', '+1 2e0 3.'])(
    'of three numbers is put in its place: "%s"',
    (text) => {
      expect(row(text)).toEqual([9, 1, 2, 3, 9]);
    },
  );

  it.each(['1 2', '1 2 3 4', '', '1 2 x', '1 2 3 #', '1,2,3', '1 nan 3', '1 2 1e999', '1 2 3\0'])(
    'is nothing else: "%s"',
    (text) => {
      expect(row(text)).toBe(false);
    },
  );
});

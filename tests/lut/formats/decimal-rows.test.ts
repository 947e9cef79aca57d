import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { latinText } from '../../../src/lut/formats/cube/text.js';
import { decimalRows } from '../../../src/lut/formats/decimal-rows.js';

/** The plain way: toFixed, and no sign where nothing is left. */
function plainRows(values: readonly number[], decimals: number): string {
  const words = values.map((value) => value.toFixed(decimals).replace(/^-(?=[0.]*$)/, ''));
  return words.map((word, i) => word + (i % 3 === 2 ? '\n' : ' ')).join('');
}

const inRows = (values: readonly number[]) => [...values, ...[1, 2].slice((values.length + 2) % 3)];
const written = (values: readonly number[], decimals: number) =>
  latinText(decimalRows(Float64Array.from(values), decimals));

/** The doubles beside a positive one. */
function beside(value: number): number[] {
  const bits = new BigInt64Array(Float64Array.of(value).buffer);
  return [-1n, 1n].map((step) => new Float64Array(BigInt64Array.of(bits[0] + step).buffer)[0]);
}

const everyDecimals = Array.from({ length: 10 }, (_, i) => 6 + i);

describe('rows of decimals', () => {
  it('have a blank between numbers, a line feed behind, and the head before', () => {
    expect(latinText(decimalRows(Float64Array.of(0, 0.5, 1, 2, -3, 1 / 3), 6, '# head\n'))).toBe(
      '# head\n0.000000 0.500000 1.000000\n2.000000 -3.000000 0.333333\n',
    );
  });

  const values = {
    shares: fc.double({ min: 0, max: 1, noNaN: true }),
    'values about white': fc.double({ min: -4, max: 4, noNaN: true }),
    'any doubles': fc.double({ noNaN: true, noDefaultInfinity: true }),
    'whole 10-bit codes': fc.integer({ min: 0, max: 1023 }).map((code) => code / 1023),
  };
  it.each(Object.entries(values))('are what toFixed gives: %s', (_, value) => {
    const lists = fc.array(value, { minLength: 1, maxLength: 30 });
    const equal = fc.property(lists, fc.constantFrom(...everyDecimals), (list, decimals) => {
      const rows = inRows(list);
      expect(written(rows, decimals)).toBe(plainRows(rows, decimals));
    });
    fc.assert(equal, { seed: 65, numRuns: 2000 });
  });

  it.each(everyDecimals)('are what toFixed gives on and beside halves of the last of %i', (decimals) => {
    const whole = fc.integer({ min: 0, max: 3 * 10 ** decimals }).map((n) => (n + 0.5) / 10 ** decimals);
    const equal = fc.property(whole, fc.constantFrom(1, -1), (half, sign) => {
      const rows = [half, ...beside(half)].map((value) => sign * value);
      expect(written(rows, decimals)).toBe(plainRows(rows, decimals));
    });
    fc.assert(equal, { seed: 66, numRuns: 2000 });
  });

  it.each(everyDecimals)(
    'are what toFixed gives for exact halves and other ends, %i decimals',
    (decimals) => {
      const halves = Array.from({ length: 400 }, (_, i) => (2 * i + 1) * 2 ** -(decimals + 1));
      const ends = [0, 5e-324, 2 ** -1022, 1e-9, 4.999999e-7, 5e-7, 0.9999994, 0.9999995, 0.99999951, 1, 1.5];
      const large = [9.5, 10, 2147.483647, 2147.4836475, 2 ** 31, 2 ** 52 + 0.5, 2 ** 53, 1e20, 1e21, 1e300];
      const rows = inRows([...halves, ...ends, ...large].flatMap((value) => [value, -value]));
      expect(written(rows, decimals)).toBe(plainRows(rows, decimals));
    },
  );

  it.each([NaN, Infinity, -Infinity])('refuse %s', (value) => {
    expect(() => decimalRows(Float64Array.of(0, 0, value), 6)).toThrow(RangeError);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  determinant3,
  diagonal3,
  identity3,
  invert3,
  type Matrix3,
  multiply3,
  transform3,
  transformRun3,
  type Triple,
} from '../../src/maths/matrix3.js';

/** Checked by hand: determinant 6 * (-14 - 40) - 1 * (28 - 10) + 1 * (32 + 4). */
const known: Matrix3 = [6, 1, 1, 4, -2, 5, 2, 8, 7];
const seed = 20;

/** Diagonally dominant, so well conditioned: an inverse is good to a few roundings. */
const wellConditioned = fc
  .array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 })
  .map((m) => m.map((value, i) => value + (i % 4 === 0 ? 4 : 0)) as unknown as Matrix3);
const roundings = 1e-13;

function expectNear(given: readonly number[], expected: readonly number[]) {
  given.forEach((value, i) => expect(Math.abs(value - expected[i]), `element ${i}`).toBeLessThan(roundings));
}

describe('3 x 3 matrices', () => {
  it('have the determinant that hand arithmetic gives', () => {
    expect(determinant3(known)).toBe(-306);
    expect(determinant3(diagonal3([2, 3, 4]))).toBe(24);
  });

  it('act on a column', () => {
    expect(transform3(known, [1, 2, 3])).toEqual([11, 15, 39]);
    expect(transform3(identity3, [1, 2, 3])).toEqual([1, 2, 3]);
  });

  it('act one after the other: the right one first', () => {
    const swap: Matrix3 = [0, 1, 0, 1, 0, 0, 0, 0, 1];
    expect(transform3(multiply3(diagonal3([2, 3, 4]), swap), [1, 10, 100])).toEqual([20, 3, 400]);
    expect(transform3(multiply3(swap, diagonal3([2, 3, 4])), [1, 10, 100])).toEqual([30, 2, 400]);
  });

  it('times their inverse are one, from either side', () =>
    fc.assert(
      fc.property(wellConditioned, (m) => {
        expectNear(multiply3(m, invert3(m)), identity3);
        expectNear(multiply3(invert3(m), m), identity3);
      }),
      { seed },
    ));

  it.each([
    ['zero', [0, 0, 0, 0, 0, 0, 0, 0, 0]],
    ['two equal rows', [1, 2, 3, 1, 2, 3, 0, 0, 1]],
    ['NaN', [NaN, 0, 0, 0, 1, 0, 0, 0, 1]],
    ['infinite', [Infinity, 0, 0, 0, 1, 0, 0, 0, 1]],
  ])('have no inverse: %s', (_, m) => expect(() => invert3(m as unknown as Matrix3)).toThrow(RangeError));

  it('act on runs as on triples, and on no more than they are told', () => {
    const run = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8, 9);
    transformRun3(known, run, 2);
    const expected = [[1, 2, 3] as Triple, [4, 5, 6] as Triple].flatMap((t) => transform3(known, t));
    expect([...run]).toEqual([...expected, 7, 8, 9]);
  });
});

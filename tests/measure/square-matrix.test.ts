import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { curvature, invert, times } from '../../src/measure/square-matrix.js';

describe('square matrices', () => {
  it('the inverse undoes the matrix', () => {
    const random = seededRandom(11);
    for (let n = 1; n <= 6; n++) {
      const matrix = Array.from({ length: n }, (_, i) =>
        Array.from({ length: n }, (_, j) => random() + (i === j ? 2 : 0)),
      );
      const vector = Array.from({ length: n }, random);
      const back = times(invert(matrix).inverse, times(matrix, vector));
      back.forEach((v, i) => expect(v).toBeCloseTo(vector[i], 10));
    }
  });

  it('exchanges rows where a diagonal is zero, and gives the size of the determinant', () => {
    const { inverse, logDeterminant } = invert([
      [0, 2],
      [3, 0],
    ]);
    expect(inverse).toEqual([
      [0, 1 / 3],
      [0.5, 0],
    ]);
    expect(Math.exp(logDeterminant)).toBeCloseTo(6, 12);
  });

  it('refuses a singular matrix and one with NaN', () => {
    expect(() => invert([[1, 2], [2, 4]])).toThrow(RangeError); // prettier-ignore
    expect(() => invert([[NaN]])).toThrow(RangeError);
  });

  it('finds the curvature of a square form, which has the same everywhere', () => {
    const form = ([x, y]: readonly number[]) => 3 * x * x + 2 * x * y - y * y + 5 * x;
    const bent = curvature(form, [0.7, -0.2], 0.01);
    [6, 2, 2, -2].forEach((v, i) => expect(bent[Math.floor(i / 2)][i % 2]).toBeCloseTo(v, 6));
  });
});

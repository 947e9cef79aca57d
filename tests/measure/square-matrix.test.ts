import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { cholesky, invert, times } from '../../src/measure/square-matrix.js';

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

  it('a root times its transpose is the matrix', () => {
    const matrix = [
      [4, 2, 0.4],
      [2, 3, -0.2],
      [0.4, -0.2, 1],
    ];
    const root = cholesky(matrix);
    matrix.forEach((row, i) =>
      row.forEach((v, j) =>
        expect(root[i].reduce((sum, u, k) => sum + u * root[j][k], 0)).toBeCloseTo(v, 12),
      ),
    );
    expect(root[0].slice(1)).toEqual([0, 0]);
  });

  it('has a root where rounding left a variance just below zero', () => {
    expect(cholesky([[-1e-18, 0], [0, 4]])).toEqual([[0, 0], [0, 2]]); // prettier-ignore
  });
});

import { describe, expect, it } from 'vitest';
import { solvePositive } from '../../src/maths/positive-solve.js';
import { normalRandom, seededRandom } from '../../src/maths/random.js';

describe('symmetric positive equations', () => {
  it('gives back what the right side was made of', () => {
    const random = seededRandom(4);
    for (let n = 1; n <= 12; n++) {
      const rows = Array.from({ length: n }, () =>
        Float64Array.from({ length: n + 2 }, () => normalRandom(random)),
      );
      const matrix = Float64Array.from({ length: n * n }, (_, at) =>
        rows[Math.floor(at / n)].reduce((sum, value, k) => sum + value * rows[at % n][k], 0),
      );
      const x = Float64Array.from({ length: n }, () => normalRandom(random));
      const right = x.map((_, i) => x.reduce((sum, value, j) => sum + matrix[i * n + j] * value, 0));
      solvePositive(matrix, right)!.forEach((value, i) => expect(value).toBeCloseTo(x[i], 6));
    }
  });

  it.each([
    ['a zero', [0]],
    ['an indefinite one', [1, 2, 2, 1]],
    ['not a number', [NaN]],
  ])('does not solve %s', (_, matrix) => {
    expect(
      solvePositive(Float64Array.from(matrix), new Float64Array(Math.sqrt(matrix.length)).fill(1)),
    ).toBeUndefined();
  });
});

/** A square matrix, row by row. */
export type Square = readonly (readonly number[])[];

/**
 * The inverse and the logarithm of the determinant's size, by elimination with row exchange.
 * @throws RangeError for a singular matrix
 */
export function invert(matrix: Square): { inverse: number[][]; logDeterminant: number } {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => Number(i === j))]);
  let logDeterminant = 0;
  for (let i = 0; i < n; i++) {
    let pivot = i;
    for (let j = i + 1; j < n; j++) if (Math.abs(rows[j][i]) > Math.abs(rows[pivot][i])) pivot = j;
    [rows[i], rows[pivot]] = [rows[pivot], rows[i]];
    const d = rows[i][i];
    if (!(Math.abs(d) > 1e-300)) throw new RangeError('the matrix has no inverse');
    logDeterminant += Math.log(Math.abs(d));
    for (let k = 0; k < 2 * n; k++) rows[i][k] /= d;
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const share = rows[j][i];
      for (let k = 0; k < 2 * n; k++) rows[j][k] -= share * rows[i][k];
    }
  }
  return { inverse: rows.map((row) => row.slice(n)), logDeterminant };
}

export const times = (matrix: Square, vector: readonly number[]): number[] =>
  matrix.map((row) => row.reduce((sum, v, j) => sum + v * vector[j], 0));

/** Second differences of a function at a point: its curvature, symmetric. */
export function curvature(
  f: (x: readonly number[]) => number,
  at: readonly number[],
  step: number,
): number[][] {
  const moved = (i: number, a: number, j: number, b: number) =>
    f(at.map((v, k) => v + (k === i ? a * step : 0) + (k === j ? b * step : 0)));
  const here = f(at);
  const out = at.map(() => at.map(() => 0));
  for (let i = 0; i < at.length; i++) {
    out[i][i] = (moved(i, 1, -1, 0) + moved(i, -1, -1, 0) - 2 * here) / step ** 2;
    for (let j = 0; j < i; j++) {
      const mixed = moved(i, 1, j, 1) - moved(i, 1, j, -1) - moved(i, -1, j, 1) + moved(i, -1, j, -1);
      out[i][j] = out[j][i] = mixed / (4 * step ** 2);
    }
  }
  return out;
}

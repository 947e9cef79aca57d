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

/** A matrix of n rows from its elements. */
export const block = (n: number, f: (i: number, j: number) => number): number[][] =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => f(i, j)));

/** Two matrices of three rows as one of six that mixes nothing. */
export const twoBlocks = (a: Square, b: Square): number[][] =>
  block(6, (i, j) => (i < 3 && j < 3 ? a[i][j] : i >= 3 && j >= 3 ? b[i - 3][j - 3] : 0));

export const sum = (a: Square, b: Square): number[][] => a.map((row, i) => row.map((v, j) => v + b[i][j]));

export const product = (a: Square, b: Square): number[][] =>
  a.map((row) => b[0].map((_, j) => row.reduce((total, v, k) => total + v * b[k][j], 0)));

export const transposed = (a: Square): number[][] => a[0].map((_, j) => a.map((row) => row[j]));

/**
 * The lower triangle whose product with its transpose is the matrix (Cholesky); what rounding has left below zero on
 * the diagonal counts as zero.
 */
export function cholesky(matrix: Square): number[][] {
  const root = matrix.map((row) => row.map(() => 0));
  matrix.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      let rest = row[j];
      for (let k = 0; k < j; k++) rest -= root[i][k] * root[j][k];
      if (i === j) root[i][j] = Math.sqrt(Math.max(0, rest));
      else root[i][j] = root[j][j] > 0 ? rest / root[j][j] : 0;
    }
  });
  return root;
}

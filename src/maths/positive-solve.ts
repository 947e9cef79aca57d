/**
 * Solves A x = b for a symmetric positive definite A (row by row, n x n), by Cholesky's square root. Both are left as
 * they were.
 * @returns x; undefined when A is not positive definite
 */
export function solvePositive(a: Float64Array, b: Float64Array): Float64Array | undefined {
  const n = b.length;
  const root = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j];
      for (let k = 0; k < j; k++) sum -= root[i * n + k] * root[j * n + k];
      if (i !== j) root[i * n + j] = sum / root[j * n + j];
      else if (sum > 0) root[i * n + i] = Math.sqrt(sum);
      else return undefined;
    }
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] -= root[i * n + k] * x[k];
    x[i] /= root[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] -= root[k * n + i] * x[k];
    x[i] /= root[i * n + i];
  }
  return x;
}

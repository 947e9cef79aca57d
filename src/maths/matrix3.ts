// Plain mathematics; knows nothing of colour or film.

/** Three numbers: a colour, a density triple, dye amounts. */
export type Triple = readonly [number, number, number];

/** A 3 x 3 matrix, row by row. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number];

export const identity3: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Matrix times column vector. */
export function transform3(m: Matrix3, [x, y, z]: Triple): Triple {
  return [m[0] * x + m[1] * y + m[2] * z, m[3] * x + m[4] * y + m[5] * z, m[6] * x + m[7] * y + m[8] * z];
}

/** The product `a b`: first b acts, then a. */
export function multiply3(a: Matrix3, b: Matrix3): Matrix3 {
  const out: number[] = [];
  for (let row = 0; row < 9; row += 3)
    for (let column = 0; column < 3; column++)
      out.push(a[row] * b[column] + a[row + 1] * b[column + 3] + a[row + 2] * b[column + 6]);
  return out as unknown as Matrix3;
}

export function diagonal3([x, y, z]: Triple): Matrix3 {
  return [x, 0, 0, 0, y, 0, 0, 0, z];
}

export function determinant3(m: Matrix3): number {
  return (
    m[0] * (m[4] * m[8] - m[5] * m[7]) -
    m[1] * (m[3] * m[8] - m[5] * m[6]) +
    m[2] * (m[3] * m[7] - m[4] * m[6])
  );
}

/** The inverse. @throws RangeError for a singular matrix. */
export function invert3(m: Matrix3): Matrix3 {
  const d = determinant3(m);
  if (d === 0 || !Number.isFinite(d)) throw new RangeError('the matrix has no inverse');
  return [
    (m[4] * m[8] - m[5] * m[7]) / d,
    (m[2] * m[7] - m[1] * m[8]) / d,
    (m[1] * m[5] - m[2] * m[4]) / d,
    (m[5] * m[6] - m[3] * m[8]) / d,
    (m[0] * m[8] - m[2] * m[6]) / d,
    (m[2] * m[3] - m[0] * m[5]) / d,
    (m[3] * m[7] - m[4] * m[6]) / d,
    (m[1] * m[6] - m[0] * m[7]) / d,
    (m[0] * m[4] - m[1] * m[3]) / d,
  ];
}

/** Applies a matrix to `count` triples in place: x y z x y z ... */
export function transformRun3(m: Matrix3, values: Float64Array, count: number): void {
  for (let i = 0; i < 3 * count; i += 3) {
    const x = values[i];
    const y = values[i + 1];
    const z = values[i + 2];
    values[i] = m[0] * x + m[1] * y + m[2] * z;
    values[i + 1] = m[3] * x + m[4] * y + m[5] * z;
    values[i + 2] = m[6] * x + m[7] * y + m[8] * z;
  }
}

/** One step of a computation on a run of triples, in place. */
export type Run = (values: Float64Array, count: number) => void;

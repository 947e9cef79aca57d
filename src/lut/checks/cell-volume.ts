/** Values of a lattice and how far apart its neighbours lie in them. */
export interface Cells {
  readonly values: Float64Array;
  /** Steps in `values` to the next node in red, green and blue. */
  readonly strides: readonly [number, number, number];
  /** One over the volume of a cell in input codes. */
  readonly perVolume: number;
}

/** The six orders in which a cell's tetrahedra leave its dark corner, and whether the order mirrors red green blue. */
const orders = [
  [0, 1, 2, 1],
  [1, 2, 0, 1],
  [2, 0, 1, 1],
  [0, 2, 1, -1],
  [2, 1, 0, -1],
  [1, 0, 2, -1],
] as const;

/**
 * The least volume to which one of the six tetrahedra of a cell is taken, as a multiple of its own; negative when
 * it comes out mirrored: colours on both sides of a surface are then shown on one. Tetrahedra that lie beyond one
 * end of the output as a whole are clipped flat by any device and not counted.
 */
export function leastVolume({ values, strides, perVolume }: Cells, corner: number): number {
  let least = Infinity;
  for (let k = 0; k < orders.length; k++) {
    const [a, b, c, turn] = orders[k];
    const second = corner + strides[a];
    const third = second + strides[b];
    const fourth = third + strides[c];
    if (isClipped(values, corner, second, third, fourth)) continue;
    const volume = boxVolume(values, corner, second, third, fourth);
    least = Math.min(least, turn * volume * perVolume);
  }
  return least;
}

/** The volume, with its sign, of the box along the three edges p-q, q-r, r-s. */
function boxVolume(v: Float64Array, p: number, q: number, r: number, s: number): number {
  const x1 = v[q] - v[p];
  const y1 = v[q + 1] - v[p + 1];
  const z1 = v[q + 2] - v[p + 2];
  const x2 = v[r] - v[q];
  const y2 = v[r + 1] - v[q + 1];
  const z2 = v[r + 2] - v[q + 2];
  const x3 = v[s] - v[r];
  const y3 = v[s + 1] - v[r + 1];
  const z3 = v[s + 2] - v[r + 2];
  return x1 * (y2 * z3 - y3 * z2) - x2 * (y1 * z3 - y3 * z1) + x3 * (y1 * z2 - y2 * z1);
}

/** Whether a channel lies beyond the same end of 0..1 at all four corners. */
function isClipped(v: Float64Array, p: number, q: number, r: number, s: number): boolean {
  for (let c = 0; c < 3; c++) {
    if (Math.max(v[p + c], v[q + c], v[r + c], v[s + c]) <= 0) return true;
    if (Math.min(v[p + c], v[q + c], v[r + c], v[s + c]) >= 1) return true;
  }
  return false;
}

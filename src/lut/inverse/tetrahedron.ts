/**
 * The four nodes between which a tetrahedral reader finds a value, and their weights: the cell's dark corner, then one
 * step along the largest fraction, then along the middle one, then along the smallest.
 */
export interface Tetrahedron {
  /** Row of each node. */
  readonly nodes: Int32Array;
  /** Weights, each 0..1, sum 1. */
  readonly weights: Float64Array;
  /** For each node, its offset from the dark corner: bit 0 = one step in red, bit 1 = green, bit 2 = blue. */
  readonly corners: Uint8Array;
}

export const newTetrahedron = (): Tetrahedron => ({
  nodes: new Int32Array(4),
  weights: new Float64Array(4),
  corners: new Uint8Array(4),
});

/** @param r g b code values, held at 0 and 1 @param size nodes a side of a lattice over 0..1 @param out overwritten */
export function locate(r: number, g: number, b: number, size: number, out: Tetrahedron): void {
  const last = size - 1;
  const at = (code: number) => (code > 0 ? Math.min(code, 1) * last : 0);
  const [pr, pg, pb] = [at(r), at(g), at(b)];
  const cell = (position: number) => Math.min(Math.floor(position), last - 1);
  const [cr, cg, cb] = [cell(pr), cell(pg), cell(pb)];
  const [fr, fg, fb] = [pr - cr, pg - cg, pb - cb];
  let first = 1;
  let [high, middle, low] = [fr, fg, fb];
  let last3 = 4;
  if (fr >= fg && fr >= fb) {
    if (fb > fg) [middle, low, last3] = [fb, fg, 2];
  } else if (fg >= fb) {
    [first, high] = [2, fg];
    if (fr >= fb) [middle, low] = [fr, fb];
    else [middle, low, last3] = [fb, fr, 1];
  } else {
    [first, high] = [4, fb];
    if (fr >= fg) [middle, low, last3] = [fr, fg, 2];
    else [middle, low, last3] = [fg, fr, 1];
  }
  const origin = cr + size * (cg + size * cb);
  setNode(out, 0, 0, 1 - high, origin, size);
  setNode(out, 1, first, high - middle, origin, size);
  setNode(out, 2, 7 - last3, middle - low, origin, size);
  setNode(out, 3, 7, low, origin, size);
}

function setNode(
  out: Tetrahedron,
  i: number,
  corner: number,
  weight: number,
  origin: number,
  size: number,
): void {
  out.corners[i] = corner;
  out.weights[i] = weight;
  out.nodes[i] = origin + (corner & 1) + size * (((corner >> 1) & 1) + size * (corner >> 2));
}

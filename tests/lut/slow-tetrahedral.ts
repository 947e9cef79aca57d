import type { Lattice } from '../../src/lut/lattice.js';

type Point = readonly number[];

const determinant = ([a, b, c]: readonly Point[]) =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) -
  a[1] * (b[0] * c[2] - b[2] * c[0]) +
  a[2] * (b[0] * c[1] - b[1] * c[0]);

const minus = (a: Point, b: Point) => a.map((x, i) => x - b[i]);

/** The six ways from corner 0 0 0 to corner 1 1 1 along edges: each way's four corners are one tetrahedron. */
const tetrahedra = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
].map((axes) => {
  const corners = [[0, 0, 0]];
  for (const axis of axes) corners.push(corners.at(-1)!.map((x, i) => (i === axis ? 1 : x)));
  return corners;
});

/** Barycentric weights of a point in a tetrahedron, by Cramer's rule: ratios of volumes. */
function weights(point: Point, corners: readonly Point[]): number[] {
  const volume = (p: readonly Point[]) =>
    determinant([minus(p[1], p[0]), minus(p[2], p[0]), minus(p[3], p[0])]);
  const whole = volume(corners);
  return corners.map((_, i) => volume(corners.map((corner, j) => (i === j ? point : corner))) / whole);
}

/** One colour through a lattice the slow way: find the tetrahedron it lies in, weigh its corners by volume. */
export function slowTetrahedral({ size, domainMin, domainMax, values }: Lattice, colour: Point): number[] {
  const places = colour.map((code, c) => {
    const share = (code - domainMin[c]) / (domainMax[c] - domainMin[c]);
    return Math.min(1, Math.max(0, share)) * (size - 1);
  });
  const cell = places.map((place) => Math.min(Math.floor(place), size - 2));
  const inside = minus(places, cell);
  const candidates = tetrahedra.map((corners) => ({ corners, share: weights(inside, corners) }));
  const within = (share: readonly number[]) => Math.min(...share);
  const { corners, share } = candidates.reduce((a, b) => (within(b.share) > within(a.share) ? b : a));
  return [0, 1, 2].map((channel) =>
    corners.reduce((sum, corner, i) => {
      const [r, g, b] = corner.map((x, axis) => x + cell[axis]);
      return sum + share[i] * values[3 * (r + size * (g + size * b)) + channel];
    }, 0),
  );
}

import type { PathCommand } from './typeface.js';

/** How much of each pixel of a rectangle lies inside an outline, 0..1, row by row. */
export interface CoverageMap {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly shares: Float64Array;
}

type Point = readonly [x: number, y: number];

/** Pieces a curve is cut into: with glyphs of some 20 pixels each is shorter than a pixel or two. */
const pieces = 8;

function curvePoint(points: readonly Point[], t: number): Point {
  // De Casteljau: halving between neighbours until one point is left, for any degree.
  let row = points;
  while (row.length > 1)
    row = row.slice(1).map(([x, y], i) => [row[i][0] + t * (x - row[i][0]), row[i][1] + t * (y - row[i][1])]);
  return row[0];
}

/** The outline as closed polygons. */
export function flatten(commands: readonly PathCommand[]): Point[][] {
  const polygons: Point[][] = [];
  let polygon: Point[] = [];
  const curve = (...controls: Point[]) => {
    const from = polygon[polygon.length - 1] ?? controls[0];
    for (let i = 1; i <= pieces; i++) polygon.push(curvePoint([from, ...controls], i / pieces));
  };
  for (const command of commands) {
    if (command.type === 'M') polygons.push((polygon = [[command.x, command.y]]));
    if (command.type === 'L') polygon.push([command.x, command.y]);
    if (command.type === 'Q') curve([command.x1, command.y1], [command.x, command.y]);
    if (command.type === 'C')
      curve([command.x1, command.y1], [command.x2, command.y2], [command.x, command.y]);
  }
  return polygons.filter(({ length }) => length > 2);
}

/**
 * Adds one edge to the rows it crosses: to each pixel the area to the right of the edge inside the pixel, to the next one
 * the rest of its height, signed by direction. Summed along a row this gives the covered area exactly.
 */
function addEdge(sums: Float64Array, width: number, [x0, y0]: Point, [x1, y1]: Point): void {
  if (y0 === y1) return;
  const sign = y0 < y1 ? 1 : -1;
  const [topX, topY, endX, endY] = y0 < y1 ? [x0, y0, x1, y1] : [x1, y1, x0, y0];
  const slope = (endX - topX) / (endY - topY);
  for (let row = Math.floor(topY); row < endY; row++) {
    const [from, to] = [Math.max(topY, row), Math.min(endY, row + 1)];
    const [a, b] = [topX + (from - topY) * slope, topX + (to - topY) * slope];
    addSpan(sums, row * width, Math.min(a, b), Math.max(a, b), sign * (to - from));
  }
}

/** A piece of an edge within one row, from x `left` to `right`, `height` of the row (signed). */
function addSpan(sums: Float64Array, row: number, left: number, right: number, height: number): void {
  const last = Math.max(Math.floor(left), Math.ceil(right) - 1);
  for (let column = Math.floor(left); column <= last; column++) {
    const [from, to] = [Math.max(left, column), Math.min(right, column + 1)];
    const part = right > left ? (height * (to - from)) / (right - left) : height;
    const inside = part * (column + 1 - (from + to) / 2);
    sums[row + column] += inside;
    sums[row + column + 1] += part - inside;
  }
}

/**
 * Fills an outline with smooth edges: the exact area of each pixel that the polygons cover. Where parts of one outline
 * overlap, the inside stays filled; parts that run the other way cut holes (the non-zero rule of font outlines).
 */
export function fillOutline(commands: readonly PathCommand[]): CoverageMap {
  const polygons = flatten(commands);
  const points = polygons.flat();
  if (points.length === 0) return { x: 0, y: 0, width: 0, height: 0, shares: new Float64Array(0) };
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [x, y] = [Math.floor(Math.min(...xs)), Math.floor(Math.min(...ys))];
  // Two columns to spare: an edge on the right border hands its rest to the next pixel.
  const width = Math.ceil(Math.max(...xs)) - x + 2;
  const height = Math.ceil(Math.max(...ys)) - y;
  const shares = new Float64Array(width * height);
  for (const polygon of polygons)
    polygon.forEach(([px, py], i) => {
      const [qx, qy] = polygon[(i + 1) % polygon.length];
      addEdge(shares, width, [px - x, py - y], [qx - x, qy - y]);
    });
  for (let row = 0; row < shares.length; row += width)
    for (let i = row, sum = 0; i < row + width; i++) shares[i] = Math.min(1, Math.abs((sum += shares[i])));
  return { x, y, width, height, shares };
}

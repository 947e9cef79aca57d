import { length2 } from './length.js';

/** A place in the frame: x from the middle to the right, y down, both in frame heights. */
export type Point = readonly [x: number, y: number];

// Signed distances in frame heights: below zero inside.

/** Distance to a line of which the radius goes from r1 at the first end to r2 at the second. */
export function toStroke(
  x: number,
  y: number,
  [x1, y1]: Point,
  [x2, y2]: Point,
  r1: number,
  r2 = r1,
): number {
  const dx = x2 - x1;
  const dy = y2 - y1;
  const t = Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy)));
  return length2(x - x1 - t * dx, y - y1 - t * dy) - (r1 + t * (r2 - r1));
}

/** Distance to an ellipse, right near its edge and of the right sign elsewhere. */
export function toEllipse(x: number, y: number, cx: number, cy: number, rx: number, ry: number): number {
  const u = (x - cx) / rx;
  const v = (y - cy) / ry;
  const k = length2(u, v);
  const slope = length2(u / rx, v / ry);
  return slope === 0 ? -Math.min(rx, ry) : (k * (k - 1)) / slope;
}

/** Distance to a box from its edges, corners rounded by r. */
export function toBox(
  x: number,
  y: number,
  left: number,
  top: number,
  right: number,
  bottom: number,
  r = 0,
): number {
  const dx = Math.max(left - x, x - right) + r;
  const dy = Math.max(top - y, y - bottom) + r;
  return length2(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - r;
}

/** Distance to a polygon of any shape. */
export function toPolygon(x: number, y: number, corners: readonly Point[]): number {
  let nearest = Infinity;
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [ax, ay] = corners[i];
    const [bx, by] = corners[j];
    const ex = bx - ax;
    const ey = by - ay;
    const wx = x - ax;
    const wy = y - ay;
    const t = Math.min(1, Math.max(0, (wx * ex + wy * ey) / (ex * ex + ey * ey)));
    const dx = wx - t * ex;
    const dy = wy - t * ey;
    nearest = Math.min(nearest, dx * dx + dy * dy);
    if (ay > y !== by > y && x < (ex * (y - ay)) / ey + ax) inside = !inside;
  }
  return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest);
}

/** The box around points, widened by a margin: left, top, right, bottom. */
export function boundsOf(points: readonly Point[], margin = 0): Bounds {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [
    Math.min(...xs) - margin,
    Math.min(...ys) - margin,
    Math.max(...xs) + margin,
    Math.max(...ys) + margin,
  ];
}

/** Left, top, right, bottom in frame heights. */
export type Bounds = readonly [left: number, top: number, right: number, bottom: number];

/** A point on the curve that begins at a, ends at c and is drawn towards b. */
export function onCurve(a: Point, b: Point, c: Point, t: number): Point {
  const s = 1 - t;
  return [s * s * a[0] + 2 * s * t * b[0] + t * t * c[0], s * s * a[1] + 2 * s * t * b[1] + t * t * c[1]];
}

import { densityOf, densitySlope } from './density.js';
import type { DyeModel } from './dye-model.js';

/**
 * Densities of red, green, blue behind given amounts of dye, and after them their nine slopes by amount: dDr/dc dDr/dm
 * dDr/dy dDg/dc ...
 */
export type DensityPoint = Float64Array;

export const newPoint = (): DensityPoint => new Float64Array(12);

/** Where the slopes of a point begin. */
export const slopesAt = 3;

/** Fills `point` with densities and slopes at the amounts. */
export function densityPoint(
  model: DyeModel,
  cyan: number,
  magenta: number,
  yellow: number,
  point: DensityPoint,
): void {
  model.lightAndSlopes(cyan, magenta, yellow, point);
  for (let k = 0; k < 3; k++) {
    const light = point[k];
    const slope = densitySlope(light);
    point[k] = densityOf(light);
    point[3 + 3 * k] *= slope;
    point[4 + 3 * k] *= slope;
    point[5 + 3 * k] *= slope;
  }
}

/** The largest difference of three densities. */
export function furthest(a: Float64Array, b: Float64Array): number {
  return Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]), Math.abs(a[2] - b[2]));
}

/** The Newton step from a point towards the target densities, cut to `longest` in any amount. */
export function newtonMove(
  point: DensityPoint,
  target: Float64Array,
  move: Float64Array,
  longest: number,
): void {
  const x = target[0] - point[0];
  const y = target[1] - point[1];
  const z = target[2] - point[2];
  const rc = point[3];
  const rm = point[4];
  const ry = point[5];
  const gc = point[6];
  const gm = point[7];
  const gy = point[8];
  const bc = point[9];
  const bm = point[10];
  const by = point[11];
  const c = gm * by - gy * bm;
  const m = gy * bc - gc * by;
  const w = gc * bm - gm * bc;
  const d = 1 / (rc * c + rm * m + ry * w);
  const moveC = d * (c * x + (ry * bm - rm * by) * y + (rm * gy - ry * gm) * z);
  const moveM = d * (m * x + (rc * by - ry * bc) * y + (ry * gc - rc * gy) * z);
  const moveY = d * (w * x + (rm * bc - rc * bm) * y + (rc * gm - rm * gc) * z);
  const most = Math.max(Math.abs(moveC), Math.abs(moveM), Math.abs(moveY));
  const share = most > longest ? longest / most : 1;
  move[0] = share * moveC;
  move[1] = share * moveM;
  move[2] = share * moveY;
}

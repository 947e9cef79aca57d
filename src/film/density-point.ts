import { densityOf, densitySlope } from './density.js';
import type { DyeModel } from './dye-model.js';

/** Densities of red, green, blue behind given amounts of dye, and their slopes by amount. */
export interface DensityPoint {
  readonly densities: Float64Array;
  /** Row by row: dDr/dc dDr/dm dDr/dy dDg/dc ... */
  readonly slopes: Float64Array;
}

export const newPoint = (): DensityPoint => ({ densities: new Float64Array(3), slopes: new Float64Array(9) });

/** Fills `point` with densities and slopes at the amounts. */
export function densityPoint(
  model: DyeModel,
  amounts: ArrayLike<number>,
  scratch: Float64Array,
  point: DensityPoint,
): void {
  model.lightAndSlopes(amounts[0], amounts[1], amounts[2], scratch);
  for (let k = 0; k < 3; k++) {
    point.densities[k] = densityOf(scratch[k]);
    const slope = densitySlope(scratch[k]);
    for (let j = 0; j < 3; j++) point.slopes[3 * k + j] = slope * scratch[3 + 3 * k + j];
  }
}

/** The largest difference of three densities. */
export function furthest(a: Float64Array, b: Float64Array): number {
  return Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]), Math.abs(a[2] - b[2]));
}

/** The Newton step from a point towards the target densities, cut to `longest` in any amount. */
export function newtonMove(
  { densities, slopes: j }: DensityPoint,
  target: Float64Array,
  move: Float64Array,
  longest: number,
): void {
  const x = target[0] - densities[0];
  const y = target[1] - densities[1];
  const z = target[2] - densities[2];
  const a = j[4] * j[8] - j[5] * j[7];
  const b = j[5] * j[6] - j[3] * j[8];
  const c = j[3] * j[7] - j[4] * j[6];
  const d = j[0] * a + j[1] * b + j[2] * c;
  move[0] = (a * x + (j[2] * j[7] - j[1] * j[8]) * y + (j[1] * j[5] - j[2] * j[4]) * z) / d;
  move[1] = (b * x + (j[0] * j[8] - j[2] * j[6]) * y + (j[2] * j[3] - j[0] * j[5]) * z) / d;
  move[2] = (c * x + (j[1] * j[6] - j[0] * j[7]) * y + (j[0] * j[4] - j[1] * j[3]) * z) / d;
  const most = Math.max(Math.abs(move[0]), Math.abs(move[1]), Math.abs(move[2]));
  if (most > longest) for (let k = 0; k < 3; k++) move[k] *= longest / most;
}

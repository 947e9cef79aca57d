import { blendSurfaces, type Exposure, lit, type Surface } from '../surfaces/surface.js';
import { cellRandom, clamp01, fractalNoise, mix, smoothStep } from './noise.js';

/** What a brick wall is made of. */
export interface BrickWork {
  readonly bricks: readonly [Surface, Surface, Surface];
  readonly mortar: Surface;
  /** Length and height of a brick with its joint, metres. */
  readonly long: number;
  readonly high: number;
}

/** Share of mortar at a distance from the middle of a joint; its mean where the joint is too fine to see. */
function jointAt(distance: number, pixel: number, high: number): number {
  const seen = clamp01((0.35 * high) / pixel - 0.5);
  return mix(0.12, smoothStep(0.006 + 0.5 * pixel, 0.004 - 0.5 * pixel, distance), seen);
}

/**
 * Brickwork in running bond at a place of the wall (u along, v up, metres), under weighed lights.
 * @param pixel size of a pixel on the wall along and up, metres: joints too fine to see are averaged
 */
export function paintBricks(
  out: Exposure,
  work: BrickWork,
  u: number,
  v: number,
  pixel: readonly [along: number, up: number],
  sun: number,
  sky: number,
  bounce: number,
): void {
  const row = Math.floor(v / work.high);
  const along = u / work.long + (row & 1 ? 0.5 : 0);
  const column = Math.floor(along);
  const upright = jointAt(Math.min(along - column, column + 1 - along) * work.long, pixel[0], work.high);
  const level = jointAt(
    Math.min(v / work.high - row, row + 1 - v / work.high) * work.high,
    pixel[1],
    work.high,
  );
  const joint = Math.max(upright, level);
  const which = mix(0.5, cellRandom(column, row), clamp01((0.5 * work.long) / pixel[0] - 0.5));
  const rough = 0.8 + 0.4 * fractalNoise(9 * u, 9 * v, 2);
  const age = 0.78 + 0.44 * fractalNoise(0.9 * u + 7, 0.7 * v, 3);
  const [first, second, third] = work.bricks;
  const brick =
    which < 0.5
      ? blendSurfaces(first, second, 1.6 * which)
      : blendSurfaces(first, third, 1.5 * (which - 0.5));
  const surface = blendSurfaces(brick, work.mortar, joint);
  const factor = rough * age;
  lit(out, surface, sun * factor, sky * factor, bounce * factor);
}

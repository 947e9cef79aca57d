import type { Point } from './shapes.js';

/**
 * A pinhole camera held level: X to the right, Y up from the ground, Z into the picture, in metres; picture places in
 * frame heights (x from the middle, y from the top).
 */
export interface Viewpoint {
  /** Focal length in frame heights. */
  readonly focal: number;
  /** y of the horizon. */
  readonly horizon: number;
  /** Height of the lens above the ground, metres. */
  readonly eye: number;
}

export function project({ focal, horizon, eye }: Viewpoint, X: number, Y: number, Z: number): Point {
  return [(focal * X) / Z, horizon - (focal * (Y - eye)) / Z];
}

/** Depth of a level plane `level` metres high, seen at y; infinite at and beyond the horizon. */
export function depthOfLevel({ focal, horizon, eye }: Viewpoint, y: number, level = 0): number {
  const depth = (focal * (eye - level)) / (y - horizon);
  return depth > 0 ? depth : Infinity;
}

/** Depth of the upright plane X = x0, seen at x. */
export const depthOfSide = ({ focal }: Viewpoint, x: number, x0: number): number => (focal * x0) / x;

/** X in metres of what is seen at x in a depth. */
export const acrossAt = ({ focal }: Viewpoint, x: number, Z: number): number => (x * Z) / focal;

/** Y in metres of what is seen at y in a depth. */
export const heightAt = ({ focal, horizon, eye }: Viewpoint, y: number, Z: number): number =>
  eye - ((y - horizon) * Z) / focal;

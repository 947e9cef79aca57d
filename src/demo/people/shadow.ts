import type { Triple } from '../../maths/matrix3.js';
import { darken, type Layer, lookUp } from '../drawing/layer.js';
import { acrossAt, depthOfLevel, project, type Viewpoint } from '../drawing/perspective.js';

/**
 * Throws the shadow of an upright figure on level ground: the figure's outline, laid down away from the sun.
 * @param part the figure as it was laid over the layer @param X where it stands @param Z its depth, metres
 * @param keep share of the light that is left in the shadow, for each film layer
 */
export function throwShadow(
  layer: Layer,
  part: Layer,
  view: Viewpoint,
  toSun: Triple,
  X: number,
  Z: number,
  keep: Triple,
): void {
  const seen = new Float64Array(3);
  const far = Z + (2.2 * toSun[2]) / toSun[1];
  const near = Math.max(0.6, Z - 0.3);
  const [, top] = project(view, X, 0, far);
  const [, bottom] = project(view, X, 0, near);
  darken(layer, [-9, top, 9, bottom], keep, (x, y) => {
    const depth = depthOfLevel(view, y);
    const across = acrossAt(view, x, depth);
    // The ray from this place to the sun meets the figure's plane at this height.
    const rise = ((depth - Z) * toSun[1]) / toSun[2];
    if (rise < -0.1) return 0;
    const [px, py] = project(view, across + (rise * toSun[0]) / toSun[1], rise, Z);
    const soft = 0.002 + 0.01 * rise;
    let cover = 0;
    for (let i = 0; i < 4; i++)
      cover += lookUp(part, px + (i & 1 ? soft : -soft), py + (i & 2 ? soft : -soft), seen);
    return 0.25 * cover;
  });
}

import type { BoatPlan } from '../../../shared/demo/layout/regatta-boats.js';
import { edge, type Layer, paint } from '../drawing/layer.js';
import { length3 } from '../drawing/length.js';
import { clamp01, noise, smoothStep } from '../drawing/noise.js';
import { boundsOf, type Point } from '../drawing/shapes.js';
import { lit, scale, type Surface, towards } from '../surfaces/surface.js';
import { daylight, haze, palette } from './setting.js';

/** A boat with its surfaces under the light of the day. */
export interface Boat extends Omit<BoatPlan, 'hull' | 'strake' | 'sail' | 'panel'> {
  readonly hull: Surface;
  readonly strake: Surface;
  readonly sail: Surface;
  readonly panel?: Surface;
}

/** Picks frame places apart into metres along the boat (bow ahead) and above the water. */
export interface BoatFrame {
  readonly toBoat: (x: number, y: number) => readonly [ahead: number, up: number];
  readonly toFrame: (boat: Point) => Point;
  /** Size of a pixel in metres. */
  readonly pixel: number;
}

/** Height of the gunwale above the water by the place along the boat, metres. */
export const sheer = ({ long }: Boat, ahead: number): number => {
  const u = ahead / long;
  return long * (0.088 + 0.11 * u * u + 0.035 * u);
};

/** The side of the hull down to the water, rounded, a strake along its top. */
export function paintHull(
  layer: Layer,
  boat: Boat,
  { toBoat, toFrame, pixel }: BoatFrame,
  air: number,
): void {
  const { long } = boat;
  const high = Math.max(sheer(boat, 0.5 * long), sheer(boat, -0.5 * long));
  const corners = [-0.55, 0.55].flatMap((end) => [
    toFrame([end * long, -0.1]),
    toFrame([end * long, 1.1 * high]),
  ]);
  paint(layer, boundsOf(corners), (x, y, out) => {
    const [ahead, up] = toBoat(x, y);
    const top = sheer(boat, ahead);
    const down = clamp01((top - up) / top);
    const half = 0.5 * long;
    const stem = half - 0.075 * long * down ** 1.6;
    const stern = -half + 0.045 * long * down;
    const outside = Math.max(up - top, -up - 0.02, ahead - stem, stern - ahead);
    if (outside > pixel) return 0;
    // The side turns under towards the water and away from the viewer towards the ends.
    const turn = 0.75 * down - 0.12;
    const ends = (1.5 * ahead * boat.bow) / long;
    const length = length3(ends, turn, 1);
    const facing = (ends * daylight.toSun[0] - turn * daylight.toSun[1] + daylight.toSun[2]) / length;
    const ripples = noise(5 * ahead + 2 * up, 14 * up + 1.5 * ahead);
    const thrown = smoothStep(0.3, 1, down) * (0.12 + 0.5 * smoothStep(0.55, 0.75, ripples));
    const strake = down < 0.13;
    const boot = up < 0.05 * long * 0.4;
    const surface = strake ? boat.strake : boot ? palette.paintWhite : boat.hull;
    lit(
      out,
      surface,
      daylight.sun * clamp01(0.12 + 0.88 * facing),
      daylight.sky * (0.7 - 0.4 * down),
      0.08 + thrown,
    );
    if (boat.planks && !strake) {
      const lap = (down * 5.5) % 1;
      const grain = 0.82 + 0.36 * noise(2.2 * ahead, 60 * up);
      scale(out, grain * (1 - 0.45 * smoothStep(0.12, 0, lap)));
    }
    const gloss =
      0.16 * smoothStep(0.1, 0, Math.abs(down - 0.3)) + 0.25 * smoothStep(0.03, 0, Math.abs(down - 0.14));
    for (let k = 0; k < 3; k++) out[k] += gloss * daylight.sun * (0.25 + 0.3 * noise(3 * ahead, 3)) * 0.5;
    towards(out, haze, air);
    return edge(outside, pixel);
  });
}

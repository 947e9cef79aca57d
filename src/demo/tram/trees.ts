import { seededRandom } from '../../maths/random.js';
import { type Clump, paintFoliage } from '../drawing/foliage.js';
import { edge, type Layer, paint, pixelOf } from '../drawing/layer.js';
import { length2 } from '../drawing/length.js';
import { cellRandom, clamp01, noise } from '../drawing/noise.js';
import { project } from '../drawing/perspective.js';
import { boundsOf, type Point, toStroke } from '../drawing/shapes.js';
import { lit, towards } from '../surfaces/surface.js';
import { daylight, haze, palette, view } from './setting.js';
import { trees } from './street.js';

interface Bough {
  readonly from: Point;
  readonly to: Point;
  readonly r1: number;
  readonly r2: number;
}

/** Boughs of a bare tree, forking from the trunk to the twigs; frame heights. */
function growTree(foot: Point, size: number, seed: number): Bough[] {
  const random = seededRandom(seed);
  const boughs: Bough[] = [];
  const grow = (from: Point, angle: number, length: number, r: number, depth: number): void => {
    const to: Point = [from[0] + length * Math.sin(angle), from[1] - length * Math.cos(angle)];
    boughs.push({ from, to, r1: r, r2: 0.78 * r });
    if (depth === 0) return;
    const count = depth > 6 ? 2 : random() < 0.3 ? 3 : 2;
    for (let i = 0; i < count; i++) {
      const fork = (i - (count - 1) / 2) * (0.5 + 0.45 * random()) + 0.3 * (random() - 0.5);
      // Boughs reach up again the further they have leant over.
      const next = 0.86 * angle + fork;
      grow(to, next, length * (0.72 + 0.18 * random()), r * (0.6 + 0.1 * random()), depth - 1);
    }
  };
  grow(foot, 0.04 * (random() - 0.5), 0.22 * size, 0.016 * size, 8);
  return boughs;
}

/** Trunk and boughs, lit from the left, snow along their upper sides. */
function paintBareTree(layer: Layer, foot: Point, size: number, air: number, seed: number): void {
  const pixel = pixelOf(layer);
  const snow = new Float64Array(3);
  for (const { from, to, r1, r2 } of growTree(foot, size, seed)) {
    const r = Math.max(r1, 0.3 * pixel);
    const length = length2(to[0] - from[0], to[1] - from[1]);
    const across: Point = [(to[1] - from[1]) / length, -(to[0] - from[0]) / length];
    const thin = clamp01((2.2 * r1) / pixel);
    paint(layer, boundsOf([from, to], r), (x, y, out) => {
      const distance = toStroke(x, y, from, to, r, Math.max(r2, 0.3 * pixel));
      if (distance > pixel) return 0;
      const side = ((x - from[0]) * across[0] + (y - from[1]) * across[1]) / r;
      const nx = side * across[0];
      const facing = clamp01(0.25 - 0.75 * nx * Math.abs(daylight.toSun[0]) * 1.3 + 0.2);
      const rough = 0.7 + 0.6 * noise(400 * x, 90 * y);
      lit(out, palette.barkDark, daylight.sun * facing * rough, daylight.sky * 0.6 * rough, 0.05);
      const up = -side * across[1];
      const lies = (clamp01(3 * (up - 0.25)) * Math.abs(to[0] - from[0])) / length;
      lit(snow, palette.snow, daylight.sun * 0.5, daylight.sky);
      towards(out, snow, clamp01(lies));
      towards(out, haze, air);
      return edge(distance, pixel) * thin * 0.92;
    });
  }
}

/** A fir with snow on its boughs. */
function paintFir(layer: Layer, X: number, Z: number, high: number): void {
  const metre = view.focal / Z;
  const clumps: Clump[] = [];
  const tiers = 13;
  for (let tier = 0; tier < tiers; tier++) {
    const up = high * (0.1 + (0.88 * tier) / tiers);
    const wide = 0.3 * (high - up) + 0.1;
    const count = 3 + Math.round((tiers - tier) * 0.6);
    for (let i = 0; i < count; i++) {
      const aside = wide * ((2 * i + 1) / count - 1 + 0.25 * (cellRandom(i, tier) - 0.5));
      const [x, y] = project(view, X + aside, up - 0.28 * Math.abs(aside), Z);
      clumps.push({
        x,
        y,
        r: metre * (0.34 + 0.16 * wide),
        z: metre * (0.6 * (wide - Math.abs(aside)) - 0.06 * up),
      });
    }
  }
  paintFoliage(
    layer,
    clumps,
    {
      sunny: palette.needles,
      shaded: palette.needles,
      leaf: 0.006 * (20 / Z) + 0.0025,
      snow: palette.snow,
      haze: { light: haze, share: 0.5 * (1 - Math.exp(-Z / 75)) },
    },
    daylight,
  );
}

/** The park behind the tram, from far to near. */
export function paintPark(layer: Layer): void {
  paintFir(layer, -13, 42, 11);
  paintFir(layer, -10.2, 21, 10.2);
  [...trees].reverse().forEach(({ X, Z, high }, i) => {
    const foot = project(view, X, 0, Z);
    paintBareTree(layer, foot, (high * view.focal) / Z, 0.75 * (1 - Math.exp(-Z / 75)), 90 + i);
  });
  paintFir(layer, -7.4, 15, 6.5);
}

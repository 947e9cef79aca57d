import { type Layer, paint } from '../drawing/layer.js';
import { length3 } from '../drawing/length.js';
import { clamp01, fractalNoise, mix, noise, smoothStep } from '../drawing/noise.js';
import { acrossAt, depthOfLevel } from '../drawing/perspective.js';
import { blendSurfaces, lit, scale, towards } from '../surfaces/surface.js';
import { daylight, haze, palette, pastTram, view } from './setting.js';

/** Trees along the park: where they stand (X, Z) and how high they are, metres. */
export const trees = [
  { X: -6.3, Z: 12.5, high: 10 },
  { X: -6.4, Z: 19, high: 11.5 },
  { X: -6.2, Z: 27, high: 11 },
  { X: -6.4, Z: 37, high: 11.5 },
  { X: -6.2, Z: 50, high: 11 },
] as const;

/** Trees out of the frame to the left that throw shadows across the street. */
const unseen = [
  { X: -4.6, Z: 1.2, high: 9 },
  { X: -6.4, Z: 4.6, high: 10 },
] as const;

/** Share of the sun that trunks and boughs let past to a place on the ground. */
function pastTrees(X: number, Z: number): number {
  const [sx, sy, sz] = daylight.toSun;
  let free = 1;
  for (const tree of [...trees, ...unseen]) {
    const t = (Z - tree.Z) / sz;
    if (t < 0) continue;
    const aside = X + sx * t - tree.X;
    const up = sy * t;
    if (up > tree.high) continue;
    const soft = 0.02 + 0.035 * t;
    const trunk = smoothStep(
      0.2 + soft,
      Math.max(0, 0.2 - soft),
      Math.abs(aside + 0.12 * Math.sin(1.1 * up)),
    );
    const crown =
      smoothStep(0.3 * tree.high, 0.62 * tree.high, up) *
      smoothStep(0.34 * tree.high, 0.1 * tree.high, Math.abs(aside));
    const boughs = smoothStep(
      0.5,
      0.7,
      fractalNoise(1.7 * aside + tree.Z, 0.8 * up - 0.7 * Math.abs(aside), 3),
    );
    free *= (1 - 0.85 * trunk * (up < 0.6 * tree.high ? 1 : 0.4)) * (1 - 0.6 * crown * boughs);
  }
  return free;
}

/** A house behind the viewer shades the nearest snow. */
const pastHouseBehind = (X: number, Z: number) =>
  smoothStep(-0.12, 0.14, Z - 3.6 - 0.34 * X - 0.06 * fractalNoise(3 * X, 3 * Z, 2));

/** Share of the sun on the ground. */
export const sunOnGround = (X: number, Z: number): number =>
  pastTram(X, 0, Z) * pastTrees(X, Z) * pastHouseBehind(X, Z);

/** Height of the snow, metres: drifts, lumps, and what feet have left. */
function snowHeight(X: number, Z: number, pixel: number): number {
  const drifts = 0.1 * fractalNoise(0.9 * X, 0.6 * Z + 4, 2);
  const lumps = (0.05 * fractalNoise(4.2 * X, 3.4 * Z, 2)) / (1 + 6 * pixel);
  const prints = (0.05 * smoothStep(0.45, 1, noise(3.6 * X + 9, 2.6 * Z))) / (1 + 10 * pixel);
  return drifts + lumps - prints;
}

const rails = [-4.05, -2.6, -1.05, 0.4 - 0.02] as const;
const slush = blendSurfaces(palette.snowTrodden, palette.asphalt, 0.55);

/** How bare the snow is: rails' beds and the ruts of carts are swept and dark. */
function bareness(X: number, Z: number): number {
  const rough = 0.5 * (fractalNoise(2.5 * X, 0.9 * Z, 3) - 0.5);
  let bare = 0;
  for (const rail of rails) bare = Math.max(bare, smoothStep(0.3, 0.04, Math.abs(X - rail) + 0.3 * rough));
  const bed = smoothStep(0.12, -0.1, Math.abs(X + 3.3) - 1.1 + rough) * 0.35;
  return Math.max(bare * 0.75, bed);
}

/** Beyond this depth, metres, the street is lost in the far end's haze. */
const furthest = 600;

/** Snow on street and pavement, rails running into the distance. */
export function paintStreet(layer: Layer): void {
  const steel = new Float64Array(3);
  paint(layer, [-9, view.horizon + 0.004, 9, 9], (x, y, out) => {
    const Z = depthOfLevel(view, y);
    if (Z > furthest) return 0;
    const X = acrossAt(view, x, Z);
    const pixel = Z / (view.focal * layer.scale);
    const d = 0.02 + pixel;
    const here = snowHeight(X, Z, pixel);
    const nx = -(snowHeight(X + d, Z, pixel) - here) / d;
    const nz = (snowHeight(X, Z + d, pixel) - here) / d;
    const [sx, sy, sz] = daylight.toSun;
    const facing = clamp01((nx * sx + sy + nz * sz) / length3(nx, 1, nz));
    const free = sunOnGround(X, Z);
    const bare = bareness(X, Z) * smoothStep(90, 20, Z);
    const glitter = noise(210 * X, 210 * Z) > 0.93 && pixel < 0.01 ? 0.35 : 0;
    const sun = daylight.sun * free * (facing * 1.25 + glitter * free);
    const hollow = 0.86 + 1.4 * (here - 0.06);
    lit(
      out,
      blendSurfaces(palette.snow, slush, bare),
      sun * (1 - 0.2 * bare),
      daylight.sky * hollow,
      0.03 * hollow,
    );
    for (const rail of rails) {
      const on =
        clamp01(0.5 + (0.035 - Math.abs(X - rail)) / Math.max(pixel, 0.004)) * Math.min(1, 0.07 / pixel);
      if (on <= 0) continue;
      lit(steel, palette.steel, 0.35 * free * daylight.sun, 0.8 * daylight.sky);
      towards(out, steel, 0.8 * on);
    }
    const kerb = Math.abs(X - 1.0) < 0.09 + pixel ? 0.3 : 0;
    scale(out, 1 - kerb * Math.min(1, 0.1 / pixel));
    towards(out, haze, mix(0, 0.75, 1 - Math.exp(-Z / 90)));
    return 1;
  });
}

import { lit, type Surface, towards } from '../surfaces/surface.js';
import { type Layer, paint } from './layer.js';
import { length3 } from './length.js';
import { cellRandom, clamp01, fractalNoise, noise, smoothStep } from './noise.js';
import type { BodyLight } from './relief-light.js';
import { boundsOf, type Point } from './shapes.js';

/** A ball of leaves: middle and radius in frame heights, z nearer when larger. */
export interface Clump {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly z: number;
}

export interface Leaves {
  readonly sunny: Surface;
  readonly shaded: Surface;
  /** Size of a spray of leaves, frame heights. */
  readonly leaf: number;
  /** Snow that lies on the upper sides. */
  readonly snow?: Surface;
  /** Exposure of the air before the tree and its share. */
  readonly haze?: { readonly light: ArrayLike<number>; readonly share: number };
}

/** Clumps strewn over an ellipse, larger in the middle: the crown of a tree. */
export function crown(cx: number, cy: number, rx: number, ry: number, count: number, seed: number): Clump[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = 2.4 * i + 6 * cellRandom(i, seed);
    const out = Math.sqrt((i + 0.5) / count);
    const r = (0.52 - 0.27 * out + 0.1 * cellRandom(seed, i)) * Math.min(rx, ry);
    return {
      x: cx + 0.86 * rx * out * Math.cos(angle),
      y: cy + 0.86 * ry * out * Math.sin(angle),
      r,
      z: (1 - out) * 0.5 * Math.min(rx, ry) + 0.3 * r * cellRandom(i + 3, seed + 5),
    };
  });
}

/** Paints a mass of leaves: sprays lit by the sun over dark gaps, ragged at the edge. */
export function paintFoliage(layer: Layer, clumps: readonly Clump[], leaves: Leaves, light: BodyLight): void {
  const { toSun, sun, sky, bounce } = light;
  const { sunny, shaded, leaf, snow, haze } = leaves;
  const reach = Math.max(...clumps.map(({ r }) => r)) * 1.4;
  const around = boundsOf(
    clumps.map(({ x, y }): Point => [x, y]),
    reach,
  );
  const other = new Float64Array(3);
  paint(layer, around, (x, y, out) => {
    const coarse = fractalNoise(x / (5 * leaf), y / (4 * leaf), 2) - 0.5;
    const fine = noise(x / (0.8 * leaf), y / (0.6 * leaf)) - 0.5;
    const ragged = 0.55 * coarse + 0.5 * fine;
    let best = -Infinity;
    let [nx, ny, nz] = [0, 0, 1];
    let rim = 0;
    for (const clump of clumps) {
      const u = (x - clump.x) / clump.r;
      const v = (y - clump.y) / clump.r;
      const q = u * u + v * v;
      const inside = 1 + ragged - q;
      if (inside <= 0) continue;
      const w = Math.sqrt(Math.min(1, inside));
      const z = clump.z + clump.r * w;
      if (z <= best) continue;
      best = z;
      [nx, ny, nz] = [u, -v, w];
      rim = inside;
    }
    if (best === -Infinity) return 0;
    const tilt = noise(x / (0.5 * leaf) + 31, y / (0.4 * leaf)) - 0.5;
    const length = length3(nx, ny, nz);
    const facing = (nx * toSun[0] + ny * toSun[1] + nz * toSun[2]) / length;
    const direct = clamp01(0.15 + 0.75 * facing + 1.1 * tilt + 0.7 * coarse);
    const open = clamp01(0.5 + 0.4 * (ny / length) + 0.9 * fine + 0.5 * coarse);
    const hue = clamp01(0.5 + 1.6 * coarse + tilt);
    lit(out, shaded, sun * direct, sky * open, bounce * 0.5);
    lit(other, sunny, sun * direct * 1.1, sky * open, bounce * 0.5);
    towards(out, other, hue);
    if (snow) {
      lit(other, snow, sun * clamp01(0.25 + facing + tilt), 0.9 * sky, bounce);
      towards(out, other, smoothStep(0.5, 0.75, 0.62 * (ny / length) + 1.3 * coarse + 0.9 * tilt + 0.2));
    }
    if (haze) towards(out, haze.light, haze.share);
    return smoothStep(0, 0.16, rim);
  });
}

import { edge, type Layer, paint } from '../drawing/layer.js';
import { length2, length3 } from '../drawing/length.js';
import { clamp01, fractalNoise, mix, noise, smoothStep } from '../drawing/noise.js';
import { boundsOf } from '../drawing/shapes.js';
import { type Exposure, lit, scale, type Surface, towards } from '../surfaces/surface.js';
import type { Boat, BoatFrame } from './hull.js';
import { daylight, haze } from './setting.js';

/** Where the sails are made fast, metres: along the boat and up. */
export interface Rig {
  readonly tack: readonly [number, number];
  readonly head: readonly [number, number];
  readonly boom: number;
  readonly stem: readonly [number, number];
  readonly hounds: readonly [number, number];
}

/**
 * Light on sailcloth: belly across the chord, creases from the corners, seams, and some light through the cloth.
 * @param c 0 at the luff, 1 at the leech @param h 0 at the foot, 1 at the head @param crease -0.5..0.5
 */
function shadeCloth(
  out: Exposure,
  surface: Surface,
  bow: number,
  c: number,
  h: number,
  crease: number,
  seam: number,
): void {
  const nx = bow * (2.1 * (0.42 - c) + 0.5 * (1 - h) * (0.5 - c)) + 1.5 * crease;
  const ny = 0.34 * (h - 0.4) + 0.9 * crease;
  const length = length3(nx, ny, 1);
  const facing = (nx * daylight.toSun[0] + ny * daylight.toSun[1] + daylight.toSun[2]) / length;
  const through = 0.1;
  const sun = daylight.sun * (through + (1 - through) * clamp01(0.06 + 1.02 * facing));
  lit(out, surface, sun, daylight.sky * (0.75 + 0.4 * ny), 0.1 * (1 - h));
  scale(out, 1 - 0.13 * seam);
}

/** Creases that run out of a corner: noise by angle, dying away with distance. */
function creasesFrom(dx: number, dy: number, reach: number, seed: number): number {
  const r = length2(dx, dy) / reach;
  const angle = Math.atan2(dy, dx);
  return (noise(9 * angle + seed, 1.2 * r) - 0.5) * Math.exp(-2.2 * r) * smoothStep(0, 0.05, r);
}

/** The triangle behind the mast, its after edge bowed out. */
export function paintMainsail(
  layer: Layer,
  { bow, sail, panel }: Boat,
  { toBoat, toFrame, pixel }: BoatFrame,
  { tack, head, boom }: Rig,
  air: number,
): void {
  const high = head[1] - tack[1];
  const behind = tack[0] - 1.12 * boom;
  const corners = [
    toFrame(tack),
    toFrame(head),
    toFrame([behind, tack[1]]),
    toFrame([behind, tack[1] + 0.5 * high]),
  ];
  paint(layer, boundsOf(corners, 0.02), (x, y, out) => {
    const [ahead, up] = toBoat(x, y);
    const h = (up - tack[1]) / high;
    if (h < -0.04 || h > 1.01) return 0;
    const wide = boom * (Math.max(0, 1 - h) ** 0.92 + 0.1 * Math.sin(Math.PI * clamp01(h)) ** 1.2) + 0.03;
    const c = (tack[0] - ahead) / wide;
    const sag = 0.02 * high * Math.sin(Math.PI * clamp01(c)) * 0.6;
    const outside = Math.max(-c * wide, (c - 1) * wide, tack[1] - sag - up, up - head[1]);
    if (outside > pixel) return 0;
    const chord = clamp01(c);
    const clew = creasesFrom(ahead - tack[0] + boom, up - tack[1], 0.5 * high, 3);
    const luff = (noise(4 * h * 6, 2.5 * chord + 7) - 0.5) * Math.exp(-7 * chord) * 0.35;
    const soft = (fractalNoise(2.2 * c + 3 * h, 5 * h + 11, 3) - 0.5) * 0.32;
    const seamAt = (9.5 * (h + 0.13 * c * (1 - h))) % 1;
    const seam = smoothStep(0.09, 0.03, Math.abs(seamAt - 0.5)) * Math.min(1, 0.03 / pixel);
    const coloured = panel && h > 0.36 && h < 0.36 + 1.05 / 9.5 + 0.06 * c;
    shadeCloth(out, coloured ? panel : sail, bow, chord, clamp01(h), 0.75 * clew + luff + soft, seam);
    const edgeSeam = smoothStep(0.1, 0.02, (1 - c) * wide) * 0.1;
    scale(out, 1 - edgeSeam);
    towards(out, haze, air);
    return edge(outside, pixel);
  });
}

/** The triangle before the mast; it shades the mainsail a little where they overlap. */
export function paintJib(
  layer: Layer,
  { bow, sail, long }: Boat,
  { toBoat, toFrame, pixel }: BoatFrame,
  { stem, hounds }: Rig,
  air: number,
): void {
  const low = stem[1] + 0.12;
  const high = hounds[1] * 0.97 - low;
  const corners = [toFrame(stem), toFrame(hounds), toFrame([stem[0] - 0.45 * long, low])];
  paint(layer, boundsOf(corners, 0.02), (x, y, out) => {
    const [ahead, up] = toBoat(x, y);
    const h = (up - low) / high;
    if (h < -0.05 || h > 1) return 0;
    const luffAt = mix(stem[0] - 0.04, hounds[0], h);
    const wide = 0.43 * long * (1 - Math.max(0, h)) * (1 - 0.1 * Math.sin(Math.PI * clamp01(h))) + 0.01;
    const c = (luffAt - ahead) / wide;
    const foot = low + 0.1 * c * (1 - c) * -long * 0.25 + 0.12 * c;
    const outside = Math.max(-c * wide, (c - 1) * wide, foot - up);
    if (outside > pixel) return 0;
    const clew = creasesFrom(ahead - (stem[0] - 0.43 * long), up - low, 0.5 * high, 8);
    const soft = (fractalNoise(2 * c + 2 * h + 20, 4.4 * h, 3) - 0.5) * 0.3;
    const seamAt = (7 * (h + 0.2 * c)) % 1;
    const seam = smoothStep(0.09, 0.03, Math.abs(seamAt - 0.5)) * Math.min(1, 0.03 / pixel);
    shadeCloth(out, sail, bow, 0.12 + clamp01(c), clamp01(h), 0.7 * clew + soft, seam);
    towards(out, haze, air);
    return edge(outside, pixel);
  });
}

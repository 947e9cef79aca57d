import { seededRandom } from '../../maths/random.js';

const side = 256;
const mask = side - 1;
const table = (() => {
  const random = seededRandom(77);
  return Float32Array.from({ length: side * side }, random);
})();

/** A random number 0..1 that belongs to a place on the whole-number grid. */
export function cellRandom(ix: number, iy: number): number {
  return table[((iy & mask) << 8) | (ix & mask)];
}

/** Value noise 0..1, mean 0.5, smooth, features of size 1. */
export function noise(x: number, y: number): number {
  const fx = Math.floor(x);
  const fy = Math.floor(y);
  let u = x - fx;
  let v = y - fy;
  u = u * u * (3 - 2 * u);
  v = v * v * (3 - 2 * v);
  const left = fx & mask;
  const right = (fx + 1) & mask;
  const upper = (fy & mask) << 8;
  const lower = ((fy + 1) & mask) << 8;
  const a = table[upper | left];
  const c = table[lower | left];
  const top = a + u * (table[upper | right] - a);
  return top + v * (c + u * (table[lower | right] - c) - top);
}

/** Noise in octaves, each twice as fine, half as strong and turned: 0..1, mean 0.5. */
export function fractalNoise(x: number, y: number, octaves: number): number {
  let sum = 0;
  let weight = 1;
  let whole = 0;
  for (let i = 0; i < octaves; i++) {
    sum += weight * noise(x, y);
    whole += weight;
    weight *= 0.5;
    // A turn by 37 degrees keeps the grids of the octaves from showing.
    const turned = 1.597 * x - 1.204 * y + 13.7;
    y = 1.204 * x + 1.597 * y + 7.3;
    x = turned;
  }
  return sum / whole;
}

/** 0 below `from`, 1 above `to`, smooth between; `from` may be the larger. */
export function smoothStep(from: number, to: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
}

export const clamp01 = (x: number): number => (x < 0 ? 0 : x > 1 ? 1 : x);

export const mix = (a: number, b: number, share: number): number => a + share * (b - a);

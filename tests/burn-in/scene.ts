import type { Run } from '../../src/maths/matrix3.js';
import { normalRandom, seededRandom } from '../../src/maths/random.js';
import type { Picture } from '../../src/picture/picture.js';
import { makePicture } from '../../src/picture/picture.js';

/** A picture that is known between its pixels too: code values r g b, 0..1, at any place. */
export type Scene = (x: number, y: number) => readonly [number, number, number];

/**
 * A drawn frame: sky and water in soft passages, a row of coloured houses, waves and grain as texture. Everything is a
 * sum of smooth functions, so a shifted still can be drawn exactly, without resampling.
 */
export function drawnScene(seed: number): Scene {
  const random = seededRandom(seed);
  const waves = Array.from({ length: 24 }, (_, i) => {
    const length = 5 + 60 * random() ** 2;
    const angle = 2 * Math.PI * random();
    const size = 0.05 * (length / 65) ** 0.6;
    const k = (2 * Math.PI) / length;
    return { kx: k * Math.cos(angle), ky: k * Math.sin(angle), phase: 7 * random(), size, channel: i % 4 };
  });
  const patches = Array.from({ length: 26 }, () => ({
    x: 400 * random(),
    y: 300 * random(),
    r: 12 + 40 * random(),
    colour: [random() - 0.5, random() - 0.5, random() - 0.5].map((value) => 1.1 * value),
  }));
  return (x, y) => {
    const sky = 0.72 - 0.5 / (1 + Math.exp((150 - y) / 25));
    const out = [sky - 0.05, sky, sky + 0.06];
    for (const patch of patches) {
      const distance = Math.hypot(x - patch.x, (y - patch.y) * 1.3);
      const inside = 1 / (1 + Math.exp((distance - patch.r) / 1.2));
      for (let c = 0; c < 3; c++) out[c] += inside * patch.colour[c];
    }
    for (const { kx, ky, phase, size, channel } of waves) {
      const wave = size * Math.sin(kx * x + ky * y + phase);
      for (let c = 0; c < 3; c++) if (channel === 3 || channel === c) out[c] += wave;
    }
    // Soft ends, so that the frame keeps within the codes without clipping.
    const soft = (value: number) => 0.02 + 0.95 / (1 + Math.exp(-4.4 * (value - 0.5)));
    return [soft(out[0]), soft(out[1]), soft(out[2])];
  };
}

export interface Shot {
  readonly width: number;
  readonly height: number;
  /** Place of the first pixel. */
  readonly dx: number;
  readonly dy: number;
  /** Deviation of the recording's noise, codes of 255. */
  readonly noise: number;
  readonly seed: number;
  readonly bits: 8 | 16;
}

/** Records a scene: through the device's change of codes, then noise, then rounding to codes. */
export function shoot(
  scene: Scene,
  device: Run,
  { width, height, dx, dy, noise, seed, bits }: Shot,
): Picture {
  const random = seededRandom(seed);
  const codes = new Float64Array(3 * width * height);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++) for (const value of scene(x + dx, y + dy)) codes[at++] = value;
  device(codes, width * height);
  const last = bits === 8 ? 255 : 65535;
  const held = (code: number) => (code > 0 ? Math.min(1, code) : 0);
  const picture = makePicture(width, height, { channels: 3, bits });
  for (let i = 0; i < codes.length; i++)
    picture.data[i] = Math.round(last * held(held(codes[i]) + (noise / 255) * normalRandom(random)));
  return picture;
}

export const asItIs: Run = () => {};

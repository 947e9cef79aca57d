import type { Codes } from '../../src/lut/apply-codes.js';
import { seededRandom } from '../../src/maths/random.js';

export const width = 3840;
export const height = 2160;
export const pixels = width * height;

/** Share of white by which grain moves a code, either way. */
const grain = 0.03;

/** Depths of a frame, as ffmpeg names them. */
export const depths = {
  rgb24: { Codes: Uint8Array, highest: 255 },
  rgb48: { Codes: Uint16Array, highest: 65535 },
} as const;

export type Depth = keyof typeof depths;

/** A frame as film gives them: smooth, with grain in each channel, all brightnesses in it. */
export function filmFrame(depth: Depth): Codes {
  const { Codes, highest } = depths[depth];
  const random = seededRandom(1965);
  const codes = new Codes(3 * pixels);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (const light of [x / width, y / height, (x + y) / (width + height)])
        codes[at++] = highest * Math.min(1, Math.max(0, light + grain * (2 * random() - 1)));
  return codes;
}

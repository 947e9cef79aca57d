import { hasAlpha } from './picture.js';
import type { Picture } from './picture.js';

/** How often each level occurs in a channel, and how many pixels were counted. */
export interface LevelCounts {
  readonly counts: Float64Array;
  readonly pixels: number;
}

/** Levels that are told apart: each code of an 8-bit picture, steps of 64 codes (those of 10 bits) of a 16-bit one. */
export const levelsOf = ({ bits }: Pick<Picture, 'bits'>): 256 | 1024 => (bits === 8 ? 256 : 1024);

/**
 * Counts the code values of one channel in the columns `from` (included) to `to` (left out). Pixels that are wholly
 * transparent are not counted: they hold no picture.
 */
export function countLevels(picture: Picture, channel: number, from = 0, to = picture.width): LevelCounts {
  const { width, channels, bits, data } = picture;
  const counts = new Float64Array(levelsOf(picture));
  const shift = bits === 8 ? 0 : 6;
  const alphaAt = hasAlpha(picture) ? channels - 1 : -1;
  let pixels = 0;
  for (let row = 0; row < data.length; row += width * channels)
    for (let at = row + from * channels; at < row + to * channels; at += channels) {
      if (alphaAt > 0 && data[at + alphaAt] === 0) continue;
      pixels++;
      counts[data[at + channel] >> shift]++;
    }
  return { counts, pixels };
}

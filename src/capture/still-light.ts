import { rangeScale, type SignalRange, toFull } from '../colour/signal-range.js';
import type { Box } from '../picture/canvas.js';
import { countLevels, levelsOf } from '../picture/level-counts.js';
import { colourChannels, expandGrey, lastCode, makePicture, type Picture } from '../picture/picture.js';

/** How a still's code values stand for light, as far as an exposure must know. */
export interface StillSignal {
  /** Signal 0..1 to linear light, rising. */
  readonly decode: (signal: number) => number;
  readonly range: SignalRange;
  /** Share of the scale, 0..1, at and beyond which the camera's channels have ended; the white of the range when left out. */
  readonly ceiling?: number;
}

/** A still with the light that each of its codes stands for. */
export interface LitStill {
  /** RGB or RGBA. */
  readonly picture: Picture;
  /** Linear light by code value, never below 0. */
  readonly light: Float64Array;
  /** Levels (of {@link levelsOf}) at and below, and at and above which a channel has ended. */
  readonly blackLevel: number;
  readonly whiteLevel: number;
  /** Light at the upper end. */
  readonly fullLight: number;
}

/** @throws RangeError for a signal without light at its upper end: a fault of the caller */
export function litStill(still: Picture, { decode, range, ceiling }: StillSignal): LitStill {
  const picture = expandGrey(still);
  const last = lastCode(picture.bits);
  const lastLevel = levelsOf(picture) - 1;
  const end = ceiling ?? rangeScale[range].white;
  const lightAt = (share: number) => Math.max(0, decode(toFull(share, range)));
  const fullLight = lightAt(end);
  if (!(fullLight > 0)) throw new RangeError(`no light at ${end} of the scale`);
  return {
    picture,
    light: Float64Array.from({ length: last + 1 }, (_, code) => lightAt(code / last)),
    blackLevel: Math.round(rangeScale[range].black * lastLevel),
    whiteLevel: Math.round(end * lastLevel),
    fullLight,
  };
}

/** The part of a still inside a box, which must lie within it. */
export function cropStill(still: LitStill, { x, y, width, height }: Box): LitStill {
  const { picture } = still;
  const { channels } = picture;
  const out = makePicture(width, height, picture);
  for (let row = 0; row < height; row++) {
    const from = ((y + row) * picture.width + x) * channels;
    out.data.set(picture.data.subarray(from, from + width * channels), row * width * channels);
  }
  return { ...still, picture: out };
}

/** One channel of a still: what is lost at its ends, and how bright its brightest parts are. */
export interface ChannelEnds {
  readonly burntOutPercent: number;
  readonly blockedPercent: number;
  /** Stops from the brightest parts to the upper end; 0 where they are burnt out, infinite where all is blocked. */
  readonly headroomStops: number;
  /** The level of the brightest parts as a share of the scale, and how many pixels have just that. */
  readonly topLevel: number;
  readonly topPercent: number;
}

/** Pixels brighter than this share of all are not taken for the brightest parts: specks, hot pixels, a scratch. */
export const speckShare = 0.001;

/** The level that all but a share of the pixels lie at or below. */
function highLevel(counts: Float64Array, pixels: number, share: number): number {
  let above = 0;
  for (let level = counts.length - 1; level > 0; level--) {
    above += counts[level];
    if (above > share * pixels) return level;
  }
  return 0;
}

/** Ends of red, green and blue. */
export function channelEnds({
  picture,
  light,
  blackLevel,
  whiteLevel,
  fullLight,
}: LitStill): [ChannelEnds, ChannelEnds, ChannelEnds] {
  const codesALevel = light.length / levelsOf(picture);
  const endsOf = (channel: number): ChannelEnds => {
    const { counts, pixels } = countLevels(picture, channel);
    const share = (from: number, to: number) =>
      (100 * counts.subarray(from, to).reduce((sum, n) => sum + n, 0)) / Math.max(1, pixels);
    const high = highLevel(counts, pixels, speckShare);
    // The middle of the level: at 16 bits a level holds 64 codes.
    const code = Math.floor((high + 0.5) * codesALevel);
    const seen = high <= blackLevel ? 0 : Math.min(fullLight, light[code]);
    const brightest = high >= whiteLevel ? fullLight : seen;
    return {
      burntOutPercent: share(whiteLevel, counts.length),
      blockedPercent: share(0, blackLevel + 1),
      headroomStops: Math.log2(fullLight / brightest),
      topLevel: high / (counts.length - 1),
      topPercent: share(high, high + 1),
    };
  };
  return [endsOf(0), endsOf(1), endsOf(2)];
}

/** Where a channel has ended: 255 there and 0 elsewhere, 8-bit grey of the still's size. */
export function endMask(still: LitStill, channel: 0 | 1 | 2, end: 'burntOut' | 'blocked'): Picture {
  const { picture, whiteLevel, blackLevel } = still;
  const mask = makePicture(picture.width, picture.height, { channels: 1, bits: 8 });
  const shift = picture.bits === 8 ? 0 : 6;
  for (let i = 0; i < mask.data.length; i++) {
    const level = picture.data[i * picture.channels + channel] >> shift;
    if (end === 'burntOut' ? level >= whiteLevel : level <= blackLevel) mask.data[i] = 255;
  }
  return mask;
}

/** Whether any colour channel of the pixel at data index `at` has ended at the top. */
export function isBurntOut({ picture, whiteLevel }: LitStill, at: number): boolean {
  const shift = picture.bits === 8 ? 0 : 6;
  for (let c = 0; c < colourChannels(picture); c++)
    if (picture.data[at + c] >> shift >= whiteLevel) return true;
  return false;
}

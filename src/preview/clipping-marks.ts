import { blendPixel } from '../picture/canvas.js';
import type { Box, Ink } from '../picture/canvas.js';
import { colourChannels, hasAlpha, makePicture } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';
import { resample } from '../picture/resample.js';

/** Code values, in a picture's own scale, at or beyond which nothing is drawn any more. */
export interface CodeLimits {
  readonly black: number;
  readonly white: number;
}

/**
 * The ends of the full range: the first and last code at 8 bits; at 16 bits the first and last step of ten bits, since
 * recorders pad shorter codes with zeros (a ten-bit white of 1023 arrives as 65472).
 */
export const fullRangeLimits = ({ bits }: Pick<Picture, 'bits'>): CodeLimits =>
  bits === 8 ? { black: 0, white: 255 } : { black: 63, white: 65472 };

/** Pixels newly lost, as masks of 0 and 255 (8-bit grey), and as shares of all pixels that hold a picture. */
export interface ClippingMarks {
  readonly burntOut: Picture;
  readonly blocked: Picture;
  readonly shares: ClippingShares;
}

/** In per cent, 0..100. */
export interface ClippingShares {
  readonly burntOutPercent: number;
  readonly blockedPercent: number;
}

/**
 * Where the change from `before` to `after` loses drawing.
 * A pixel is newly burnt out when a colour channel stands at white (or beyond) that did not before: one channel
 * is enough, since its texture is gone and the hue turns. It is newly blocked when all its channels stand at black
 * and did not all before: one channel at black is only a pure colour. Transparent pixels of `after` do not count.
 * @param before,after code values as a device holds them, of one size; depths and channels may differ
 * @param limits the codes of white and black; by default the ends of the full range, for legal range its own
 * @throws RangeError for pictures of two sizes
 */
export function findClipping(
  before: Picture,
  after: Picture,
  limits: { readonly before?: CodeLimits; readonly after?: CodeLimits } = {},
): ClippingMarks {
  if (before.width !== after.width || before.height !== after.height)
    throw new RangeError('pictures of two sizes cannot be compared');
  const { width, height } = after;
  const burntOut = makePicture(width, height, { channels: 1, bits: 8 });
  const blocked = makePicture(width, height, { channels: 1, bits: 8 });
  const was = endsOf(before, limits.before);
  const is = endsOf(after, limits.after);
  let [counted, burntCount, blockedCount] = [0, 0, 0];
  for (let i = 0; i < width * height; i++) {
    if (!is.visible(i)) continue;
    counted++;
    if ((is.atWhite(i) & ~was.atWhite(i)) !== 0) [burntOut.data[i], burntCount] = [255, burntCount + 1];
    if (is.allBlack(i) && !was.allBlack(i)) [blocked.data[i], blockedCount] = [255, blockedCount + 1];
  }
  const percent = (count: number) => (counted === 0 ? 0 : (100 * count) / counted);
  return {
    burntOut,
    blocked,
    shares: { burntOutPercent: percent(burntCount), blockedPercent: percent(blockedCount) },
  };
}

/** Questions about pixel i of a picture; a grey picture answers for three equal channels. */
function endsOf(source: Picture, { black, white }: CodeLimits = fullRangeLimits(source)) {
  const { channels, data } = source;
  const colours = colourChannels(source);
  return {
    visible: (i: number) => !hasAlpha(source) || data[(i + 1) * channels - 1] > 0,
    /** Bits 1, 2, 4 for red, green, blue at white. */
    atWhite: (i: number) => {
      const at = i * channels;
      if (colours === 1) return data[at] >= white ? 7 : 0;
      return (data[at] >= white ? 1 : 0) | (data[at + 1] >= white ? 2 : 0) | (data[at + 2] >= white ? 4 : 0);
    },
    allBlack: (i: number) => {
      const at = i * channels;
      if (colours === 1) return data[at] <= black;
      return data[at] <= black && data[at + 1] <= black && data[at + 2] <= black;
    },
  };
}

/** A hatching: where it has ink, by the pixel's place; told from the other by its form, not only its colour. */
export type Hatching = (x: number, y: number) => boolean;

/** Burnt out: slanted lines. Blocked: dots, staggered. */
export const hatchings = {
  burntOut: (x, y) => (x + y) % 8 < 2,
  blocked: (x, y) => y % 6 < 2 && (x + (y % 12 < 6 ? 0 : 3)) % 6 < 2,
} as const satisfies Record<keyof Omit<ClippingMarks, 'shares'>, Hatching>;

/** A place counts as lost when, of the pixels within two steps of it, this share is: grain does not fray the marks. */
const lostShare = 0.25;
const reach = 2;

/** How strongly lost pixels outside of such places are dotted in: seen, but not in the way. */
const speckStrength = 0.6;

/** Mean of the shares around each pixel, `reach` to each side; at the border of the pixels that there are. */
function meanAround({ width, height, data }: Picture): Float64Array {
  const span = (at: number, length: number) => [Math.max(0, at - reach), Math.min(length - 1, at + reach)];
  return Float64Array.from({ length: width * height }, (_, i) => {
    const [left, right] = span(i % width, width);
    const [top, bottom] = span(Math.floor(i / width), height);
    let sum = 0;
    for (let y = top; y <= bottom; y++) for (let x = left; x <= right; x++) sum += data[y * width + x];
    return sum / (255 * (right - left + 1) * (bottom - top + 1));
  });
}

/**
 * Draws marks over a picture that is shown at `box` of the canvas: places that are lost get a line around and hatching
 * inside, single lost pixels a speck.
 * @param mask 0 and 255, 8-bit grey, of any size: it is brought to the size of the box
 */
export function drawMarks(canvas: Picture, box: Box, mask: Picture, hatching: Hatching, ink: Ink): void {
  const shown = resample(mask, box.width, box.height);
  const { width, height } = shown;
  const around = meanAround(shown);
  // Beyond the frame counts as lost: no line is drawn along the picture's own border.
  const lost = (x: number, y: number) =>
    x < 0 || y < 0 || x >= width || y >= height || around[y * width + x] >= lostShare;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const speck = (speckStrength * shown.data[y * width + x]) / 255;
      const inner = lost(x - 1, y) && lost(x + 1, y) && lost(x, y - 1) && lost(x, y + 1);
      const strength = !lost(x, y) ? speck : !inner || hatching(x, y) ? 1 : 0;
      if (strength > 0) blendPixel(canvas, box.x + x, box.y + y, ink, strength);
    }
}

/** A share in words: none, less than 0.1 %, 0.3 %, 12 %. */
function shareInWords(percent: number): string {
  if (percent === 0) return 'none';
  if (percent < 0.1) return 'less than 0.1 %';
  return `${percent < 9.95 ? percent.toFixed(1) : percent.toFixed(0)} %`;
}

/** The two halves of the caption: `0.3 % newly burnt out`, `none newly blocked`. */
export function marksInWords({
  burntOutPercent,
  blockedPercent,
}: ClippingShares): [burntOut: string, blocked: string] {
  return [
    `${shareInWords(burntOutPercent)} newly burnt out`,
    `${shareInWords(blockedPercent)} newly blocked`,
  ];
}

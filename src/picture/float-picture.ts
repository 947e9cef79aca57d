import { makePicture, type Picture } from './picture.js';

/**
 * An image in floating point, interleaved as a {@link Picture}'s: 0 is the first code and 1 the last, values outside are
 * kept. Alpha is straight, 0..1.
 */
export interface FloatPicture {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3 | 4;
  readonly data: Float32Array;
}

/** Values that are no finite numbers, and finite ones outside 0..1. */
export function countOdd({ data }: FloatPicture): { notFinite: number; outside: number } {
  let [notFinite, outside] = [0, 0];
  for (let i = 0; i < data.length; i++) {
    if (!Number.isFinite(data[i])) notFinite++;
    else if (data[i] < 0 || data[i] > 1) outside++;
  }
  return { notFinite, outside };
}

/** The same in 16-bit codes, rounded to the nearest; what lies outside 0..1 becomes the first or the last. */
export function floatsToCodes({ width, height, channels, data }: FloatPicture): Picture {
  const codes = new Uint16Array(data.length);
  for (let i = 0; i < data.length; i++) codes[i] = Math.round(65535 * Math.min(1, Math.max(0, data[i])));
  return makePicture(width, height, { channels, bits: 16 }, codes);
}

/** Grey becomes RGB with three equal channels; colour is returned as it is. */
export function expandGreyFloats(picture: FloatPicture): FloatPicture {
  if (picture.channels !== 1) return picture;
  const data = new Float32Array(3 * picture.data.length);
  for (let i = 0; i < data.length; i++) data[i] = picture.data[Math.floor(i / 3)];
  return { ...picture, channels: 3, data };
}

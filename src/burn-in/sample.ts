import type { Picture } from '../picture/picture.js';
import { lastCode } from '../picture/picture.js';

/** Shifts in whole pixels that are looked for each way. */
export const widestShift = 4;
/** Pixels at the border that are left alone: the widest shift and the reach of the resampling. */
export const border = widestShift + 4;

/** Weights of the four neighbours at a fraction 0..1 (Keys 1981, IEEE Trans. ASSP 29, 1153-1160, a = -1/2). */
function cubicWeights(t: number): readonly [number, number, number, number] {
  return [
    ((-0.5 * t + 1) * t - 0.5) * t,
    (1.5 * t - 2.5) * t * t + 1,
    ((-1.5 * t + 2) * t + 0.5) * t,
    (0.5 * t - 0.5) * t * t,
  ];
}

/**
 * Reads `count` pixels in a row from places between the pixels, by cubic convolution.
 * @param picture three channels, or four (alpha is passed over)
 * @param x @param y place of the first, at least 1 pixel and at most size - 3 from the border, all of the row likewise
 * @param out r g b code values, about 0..1, interleaved
 */
export function samplePixels(picture: Picture, x: number, y: number, count: number, out: Float64Array): void {
  const { width, channels, data } = picture;
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const across = cubicWeights(x - x0);
  const down = cubicWeights(y - y0).map((weight) => weight / lastCode(picture.bits));
  for (let i = 0; i < count; i++)
    for (let c = 0; c < 3; c++) {
      let sum = 0;
      for (let j = 0; j < 4; j++) {
        const at = ((y0 + j - 1) * width + x0 + i - 1) * channels + c;
        const row =
          across[0] * data[at] +
          across[1] * data[at + channels] +
          across[2] * data[at + 2 * channels] +
          across[3] * data[at + 3 * channels];
        sum += down[j] * row;
      }
      out[3 * i + c] = sum;
    }
}

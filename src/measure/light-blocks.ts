import { primaries } from '../colour/primaries/index.js';
import { rgbToRgb } from '../colour/primaries/rgb-matrix.js';
import type { TransferFunction } from '../colour/transfer-functions/index.js';
import { densityLight } from '../film/density-light.js';
import { gateLight } from '../film/stock.js';
import { multiply3, transform3, transformRun3, type Triple } from '../maths/matrix3.js';
import { expandGrey, lastCode, type Picture } from '../picture/picture.js';

/** Mean linear light of a still's blocks, and what could not be read. */
export interface LightBlocks {
  /** Linear light in the primaries of densities, of the blocks that can be trusted, on the camera's own scale. */
  readonly light: Float64Array;
  /** Mean of all pixels, the burnt-out ones at the end of the scale: at least so much light there was. */
  readonly atLeast: Triple;
  /** Shares of all pixels with a channel at or near the last code, and with a channel at code 0. */
  readonly burntOut: number;
  readonly blocked: number;
}

/** A part of a still, in pixels from the top left. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Blocks a still is cut into, about: enough for its statistics, and each the mean of many pixels in a large still. */
const blocksWanted = 40_000;
/** Codes this close to the last one (in 255ths) are taken as burnt out: sensors and encoders clip a little early. */
const burntOutWithin = 1 / 255;
/** A block is left out when more than this share of its pixels is blocked: what is left of it is no mean. */
const blockedAtMost = 0.5;

const toDensityPrimaries = multiply3(
  densityLight(gateLight).fromBt2020,
  rgbToRgb(primaries.bt709, primaries.bt2020),
);

/**
 * Cuts a region into square blocks and averages linear light in each, so that noise does not pass for density.
 * @param encoding what the still was written with; full range, BT.709 primaries
 */
export function lightBlocks(still: Picture, encoding: TransferFunction, region: Region): LightBlocks {
  const { data, channels, bits, width } = expandGrey(still);
  const last = lastCode(bits);
  const decoded = Float64Array.from({ length: last + 1 }, (_, code) => encoding.decode(code / last));
  const burntFrom = Math.ceil(last * (1 - burntOutWithin));
  const side = Math.max(1, Math.ceil(Math.sqrt((region.width * region.height) / blocksWanted)));
  const light: number[] = [];
  let [burntOut, blocked] = [0, 0];
  const sums = [0, 0, 0];
  for (let top = region.y; top < region.y + region.height; top += side)
    for (let left = region.x; left < region.x + region.width; left += side) {
      const bottom = Math.min(top + side, region.y + region.height);
      const right = Math.min(left + side, region.x + region.width);
      const pixels = (bottom - top) * (right - left);
      let [red, green, blue, burntHere, blockedHere] = [0, 0, 0, 0, 0];
      for (let y = top; y < bottom; y++)
        for (let i = (y * width + left) * channels; i < (y * width + right) * channels; i += channels) {
          const [r, g, b] = [data[i], data[i + 1], data[i + 2]];
          if (r >= burntFrom || g >= burntFrom || b >= burntFrom) burntHere++;
          if (r === 0 || g === 0 || b === 0) blockedHere++;
          red += decoded[r];
          green += decoded[g];
          blue += decoded[b];
        }
      sums[0] += red;
      sums[1] += green;
      sums[2] += blue;
      burntOut += burntHere;
      blocked += blockedHere;
      if (burntHere > 0 || blockedHere > blockedAtMost * pixels) continue;
      light.push(red / pixels, green / pixels, blue / pixels);
    }
  const run = Float64Array.from(light);
  transformRun3(toDensityPrimaries, run, run.length / 3);
  const all = region.width * region.height;
  return {
    light: run,
    atLeast: transform3(toDensityPrimaries, [sums[0] / all, sums[1] / all, sums[2] / all]),
    burntOut: burntOut / all,
    blocked: blocked / all,
  };
}

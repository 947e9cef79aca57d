import type { Run } from '../maths/matrix3.js';
import type { Picture } from '../picture/picture.js';
import { lastCode } from '../picture/picture.js';
import type { Registration } from './register.js';
import { border, samplePixels } from './sample.js';

/** Pixels a side of the blocks that are compared by their means: noise of 0.6 code shrinks to 0.075. */
const side = 8;
const pixelsOfBlock = side * side;
/** Blocks that are enough. */
const mostBlocks = 1600;

/** Corresponding places of the two stills. */
export interface Blocks {
  readonly count: number;
  /** The plain still's pixels, block after block, r g b 0..1, at the places that the burnt still shows. */
  readonly pixels: Float64Array;
  /** The burnt still's mean of each block, r g b 0..1. */
  readonly burnt: Float64Array;
}

/** Mean r g b of each block of pixels. */
function means(pixels: Float64Array, blocks: number): Float64Array {
  const out = new Float64Array(3 * blocks);
  for (let block = 0, at = 0; block < blocks; block++)
    for (let i = 0; i < pixelsOfBlock; i++)
      for (let c = 0; c < 3; c++) out[3 * block + c] += pixels[at++] / pixelsOfBlock;
  return out;
}

/** What each block's mean would be if the pixels had gone through `predict`; codes are held within 0..1. */
export function predictedMeans({ pixels, count }: Blocks, predict: Run): Float64Array {
  const run = pixels.slice();
  predict(run, count * pixelsOfBlock);
  for (let i = 0; i < run.length; i++) run[i] = run[i] > 0 ? Math.min(1, run[i]) : 0;
  return means(run, count);
}

/** The plain still's mean of each block. */
export const plainMeans = ({ pixels, count }: Blocks): Float64Array => means(pixels, count);

/** Every `every`-th block, for searches. */
export function thinned({ count, pixels, burnt }: Blocks, every: number): Blocks {
  const kept = Array.from({ length: Math.ceil(count / every) }, (_, i) => i * every);
  const gather = (run: Float64Array, size: number) => {
    const out = new Float64Array(kept.length * size);
    kept.forEach((block, i) => out.set(run.subarray(block * size, (block + 1) * size), i * size));
    return out;
  };
  return { count: kept.length, pixels: gather(pixels, 3 * pixelsOfBlock), burnt: gather(burnt, 3) };
}

/** Top left corners of blocks spread evenly over the picture. */
function corners({ width, height }: Picture): (readonly [number, number])[] {
  const [across, down] = [width, height].map((size) => Math.floor((size - 2 * border) / side));
  const all = Array.from({ length: across * down }, (_, i) => i);
  const share = Math.min(1, mostBlocks / all.length);
  // The golden ratio spreads the chosen ones over rows and columns alike.
  return all
    .filter((i) => share === 1 || (i * 0.6180339887498949) % 1 < share)
    .map((i) => [border + side * (i % across), border + side * Math.floor(i / across)]);
}

function burntMean(burnt: Picture, left: number, top: number, out: Float64Array, at: number): void {
  const { width, channels, data } = burnt;
  const scale = 1 / (pixelsOfBlock * lastCode(burnt.bits));
  for (let y = top; y < top + side; y++)
    for (let x = left; x < left + side; x++)
      for (let c = 0; c < 3; c++) out[at + c] += scale * data[(y * width + x) * channels + c];
}

/** Codes of 255 from either end within which noise is cut on one side, so that means lie. */
const cutNoise = 2 / 255;

/** Gathers the blocks; those at the very end of the codes are left out, unless there is little else. */
export function gatherBlocks(plain: Picture, burnt: Picture, { dx, dy }: Registration): Blocks {
  const places = corners(burnt);
  const pixels = new Float64Array(places.length * pixelsOfBlock * 3);
  const burntMeans = new Float64Array(places.length * 3);
  places.forEach(([left, top], i) => {
    for (let y = 0; y < side; y++) {
      const at = 3 * (i * pixelsOfBlock + y * side);
      samplePixels(plain, left + dx, top + y + dy, side, pixels.subarray(at, at + 3 * side));
    }
    burntMean(burnt, left, top, burntMeans, 3 * i);
  });
  const plainOnes = means(pixels, places.length);
  const inside = (value: number) => value > cutNoise && value < 1 - cutNoise;
  const kept = places
    .map((_, i) => i)
    .filter(
      (i) =>
        plainOnes.subarray(3 * i, 3 * i + 3).every(inside) &&
        burntMeans.subarray(3 * i, 3 * i + 3).every(inside),
    );
  const chosen = kept.length >= places.length / 4 ? kept : places.map((_, i) => i);
  const pick = (run: Float64Array, size: number) => {
    const out = new Float64Array(chosen.length * size);
    chosen.forEach((block, i) => out.set(run.subarray(block * size, (block + 1) * size), i * size));
    return out;
  };
  return { count: chosen.length, pixels: pick(pixels, 3 * pixelsOfBlock), burnt: pick(burntMeans, 3) };
}

import type { Run } from '../maths/matrix3.js';
import { percentile } from '../maths/percentile.js';
import type { Picture } from '../picture/picture.js';
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
  /** The burnt still's pixels, in the order of `pixels`. */
  readonly burntPixels: Float64Array;
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

/**
 * Noise between the two stills in codes of 255: how single pixels stray from what the blocks' means have in common with a
 * prediction, in the calmer quarter of the blocks, where a shift that is a little off does no harm.
 */
export function noiseOf({ pixels, burntPixels, count }: Blocks, predict: Run): number {
  const run = pixels.slice();
  predict(run, count * pixelsOfBlock);
  const apart = run.map((value, i) => 255 * (burntPixels[i] - value));
  const middle = means(apart, count);
  const variances = Float64Array.from({ length: count }, (_, block) => {
    let sum = 0;
    for (let i = 0; i < 3 * pixelsOfBlock; i++)
      sum += (apart[3 * pixelsOfBlock * block + i] - middle[3 * block + (i % 3)]) ** 2;
    return sum / (3 * (pixelsOfBlock - 1));
  });
  return Math.sqrt(percentile(variances, 0.25));
}

/** The plain still's mean of each block. */
export const plainMeans = ({ pixels, count }: Blocks): Float64Array => means(pixels, count);

/** Some of the blocks. */
function chosen({ pixels, burnt, burntPixels }: Blocks, kept: readonly number[]): Blocks {
  const gather = (run: Float64Array, size: number) => {
    const out = new Float64Array(kept.length * size);
    kept.forEach((block, i) => out.set(run.subarray(block * size, (block + 1) * size), i * size));
    return out;
  };
  const whole = 3 * pixelsOfBlock;
  return {
    count: kept.length,
    pixels: gather(pixels, whole),
    burnt: gather(burnt, 3),
    burntPixels: gather(burntPixels, whole),
  };
}

/** Every `every`-th block, for searches. */
export const thinned = (blocks: Blocks, every: number): Blocks =>
  chosen(
    blocks,
    Array.from({ length: Math.ceil(blocks.count / every) }, (_, i) => i * every),
  );

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

/** Codes of 255 from either end within which noise is cut on one side, so that means lie. */
const cutNoise = 2 / 255;

/** Blocks whose means lie clear of both ends of the codes. */
export function clearOfEnds(blockMeans: Float64Array): boolean[] {
  return Array.from({ length: blockMeans.length / 3 }, (_, i) =>
    blockMeans.subarray(3 * i, 3 * i + 3).every((value) => value > cutNoise && value < 1 - cutNoise),
  );
}

/** Pixels of the blocks whose top left corners lie at `places`, moved by the shift. */
function pixelsAt(
  picture: Picture,
  places: readonly (readonly [number, number])[],
  { dx, dy }: { readonly dx: number; readonly dy: number },
): Float64Array {
  const pixels = new Float64Array(3 * pixelsOfBlock * places.length);
  places.forEach(([left, top], i) => {
    for (let y = 0; y < side; y++) {
      const at = 3 * (i * pixelsOfBlock + y * side);
      samplePixels(picture, left + dx, top + y + dy, side, pixels.subarray(at, at + 3 * side));
    }
  });
  return pixels;
}

/** Gathers the blocks; those at the very end of the codes are left out, unless there is little else. */
export function gatherBlocks(plain: Picture, burnt: Picture, shift: Registration): Blocks {
  const places = corners(burnt);
  const pixels = pixelsAt(plain, places, shift);
  const burntPixels = pixelsAt(burnt, places, { dx: 0, dy: 0 });
  const burntMeans = means(burntPixels, places.length);
  const all = { count: places.length, pixels, burnt: burntMeans, burntPixels };
  const [plainClear, burntClear] = [means(pixels, places.length), burntMeans].map(clearOfEnds);
  const kept = places.map((_, i) => i).filter((i) => plainClear[i] && burntClear[i]);
  return kept.length >= places.length / 4 ? chosen(all, kept) : all;
}

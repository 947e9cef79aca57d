import { InputError } from '../errors/input-error.js';
import type { Picture } from '../picture/picture.js';
import type { Blocks } from './blocks.js';
import { plainMeans } from './blocks.js';
import { leastTextured } from './doubts.js';
import type { Fit } from './fit.js';
import type { Registration } from './register.js';
import { border, widestShift } from './sample.js';

/** Stills smaller than this have too few places to compare. */
const leastSide = 2 * border + 32;

/** @throws InputError for stills of two sizes, and for tiny ones */
export function requireSizes(plain: Picture, burnt: Picture): void {
  if (plain.width !== burnt.width || plain.height !== burnt.height)
    throw new InputError({
      what: `the two stills differ in size: ${plain.width} x ${plain.height} and ${burnt.width} x ${burnt.height}`,
      hint: 'Take both from the same recording format, uncropped.',
    });
  if (Math.min(plain.width, plain.height) < leastSide)
    throw new InputError({
      what: `the stills are too small: ${plain.width} x ${plain.height} pixels`,
      allowed: `${leastSide} pixels a side or more`,
    });
}

/** Share of the codes, from either end, within which a frame holds nothing to judge a look by: 2 codes of 255. */
const nothingWithin = 2 / 255;
/** Share of the frame that must lie beyond. */
const leastShown = 0.02;

/** @throws InputError when the plain still is black or white all over */
export function requireLight(blocks: Blocks): void {
  const colours = plainMeans(blocks);
  const [dark, light] = [
    (code: number) => code <= nothingWithin,
    (code: number) => code >= 1 - nothingWithin,
  ].map((ended) => {
    let count = 0;
    for (let i = 0; i < blocks.count; i++) if (colours.subarray(3 * i, 3 * i + 3).every(ended)) count++;
    return count / blocks.count;
  });
  if (dark + light <= 1 - leastShown) return;
  throw new InputError({
    what: `the still without the look is ${dark > light ? 'black' : 'white'} all over: nothing can be told from it`,
    hint: 'Take both stills of a frame with light and shade.',
  });
}

/** Codes of 255, and likeness of texture, beyond which two stills do not show one frame. */
const otherFrame = { rms: 6, correlation: 0.3 };

function showOneFrame(free: Fit, { correlation, tiles }: Registration): boolean {
  if (tiles.textured >= leastTextured) return tiles.alike > tiles.textured / 2;
  return free.rms < otherFrame.rms || correlation > otherFrame.correlation;
}

/** @param free the best that any smooth change of colour could do @throws InputError for two frames */
export function requireOneFrame(free: Fit, shift: Registration): void {
  if (showOneFrame(free, shift)) return;
  throw new InputError({
    what: `the two stills do not show the same frame, or lie more than ${widestShift} pixels apart`,
    hint: 'Stop the film on one frame and take both stills of it, or pick the same frame of two runs.',
  });
}

import type { CodeEnds } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import { sampleLut } from '../interpolate.js';
import { nodeCode } from '../lattice.js';
import type { CheckContext } from './finding.js';

/** A run of greys: each code three times. */
export function greys(codes: readonly number[]): Float64Array {
  return Float64Array.from({ length: 3 * codes.length }, (_, i) => codes[Math.floor(i / 3)]);
}

/** `count` codes from `first` to `last`, evenly spread, both included. */
export const evenCodes = (count: number, first = 0, last = 1): number[] =>
  Array.from({ length: count }, (_, i) => nodeCode(i, count, first, last));

/** Y of each colour of a run that is decoded in place. */
export function luminances(decode: Run, codes: Float64Array): Float64Array {
  const xyz = codes.slice();
  decode(xyz, xyz.length / 3);
  return xyz.filter((_, i) => i % 3 === 1);
}

/**
 * Code values through the LUT in place, clipped to 0..1 as every device clips them.
 * What the LUT holds beyond is the business of the check of the output range.
 */
export function throughDevice({ lut }: CheckContext, run: Float64Array): Float64Array {
  sampleLut(lut)(run, run.length / 3);
  for (let i = 0; i < run.length; i++) run[i] = Math.min(1, Math.max(0, run[i]));
  return run;
}

/** Halvings of an interval until a double can tell its ends apart no more. */
const halvings = 52;

/** The grey input code, 0..1, at which the light rises above Y = `light`; 0 or 1 if it does so beyond. */
export function codeOfLight({ decodeInput }: Pick<CheckContext, 'decodeInput'>, light: number): number {
  let [low, high] = [0, 1];
  if (luminances(decodeInput, greys([low]))[0] > light) return low;
  if (luminances(decodeInput, greys([high]))[0] <= light) return high;
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (luminances(decodeInput, greys([middle]))[0] > light) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * The grey input codes of no light and of the brightest light the film can show. Codes beyond, such as the
 * foot- and headroom of legal range or the top of a log curve, hold no picture and are not judged.
 */
export const pictureRange = (context: Pick<CheckContext, 'decodeInput'>): CodeEnds => ({
  black: codeOfLight(context, 0),
  white: codeOfLight(context, 1 - lightRounding),
});

/** What decoding may lose of white: less than any code. */
const lightRounding = 1e-6;

/** Light of mid-grey as a share of white: the grey card (common practice, no source). */
export const midGrey = 0.18;

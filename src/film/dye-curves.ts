import type { Spectrum } from '../colour/spectrum.js';
import { perStep } from '../maths/exponential.js';
import { transmittanceOf } from './density.js';
import type { DyeSet } from './dye-sets/dye-set.js';
import { type FilmLight, filmWavelengths } from './film-light.js';

/** Wavelengths of a curve: those of film and one without weight, since two are worked on at once. */
export const curveLength = filmWavelengths + (filmWavelengths % 2);

/** Where the curves of {@link dyeCurves} begin. */
export const curveStarts = {
  cyan: 0,
  magenta: curveLength,
  yellow: 2 * curveLength,
  red: 3 * curveLength,
  green: 4 * curveLength,
  blue: 5 * curveLength,
} as const;

/** Numbers in all six. */
export const curvesLength = 6 * curveLength;

/**
 * What the sums over the spectrum are made of, six curves one after the other: what a density of 1 of cyan, magenta,
 * yellow takes from the light, as steps of `powerOfSteps`; the observer's weights of red, green, blue behind all that is
 * not image dye.
 * @param base density of all that is not image dye: clear base and stain
 */
export function dyeCurves(dyes: DyeSet, base: Spectrum, light: FilmLight): Float64Array {
  const curves = new Float64Array(curvesLength);
  for (let i = 0; i < filmWavelengths; i++) {
    const through = transmittanceOf(base[i]);
    for (const dye of ['cyan', 'magenta', 'yellow'] as const)
      curves[curveStarts[dye] + i] = -(Math.LN10 / perStep) * dyes[dye][i];
    for (const channel of ['red', 'green', 'blue'] as const)
      curves[curveStarts[channel] + i] = through * light[channel][i];
  }
  return curves;
}

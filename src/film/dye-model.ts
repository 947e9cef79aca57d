import type { Spectrum } from '../colour/spectrum.js';
import { perStep, powerOfSteps } from '../maths/exponential.js';
import { curveLength, curveStarts, dyeCurves } from './dye-curves.js';
import type { DyeSet } from './dye-sets/dye-set.js';
import type { FilmLight } from './film-light.js';

/** What a light becomes behind given amounts of three dyes: Beer-Lambert on every wavelength, then the observer. */
export interface DyeModel {
  /**
   * Linear red green blue behind the film, open gate 1 1 1.
   * @param cyan amounts of dye, 1 = peak density 1, -100..100
   * @param out receives three numbers
   */
  light(cyan: number, magenta: number, yellow: number, out: Float64Array): void;
  /** The same, and behind it the nine slopes by amount: dR/dc dR/dm dR/dy dG/dc ... dB/dy. */
  lightAndSlopes(cyan: number, magenta: number, yellow: number, out: Float64Array): void;
}

/**
 * Makes a model: T(l) = 10^-(base(l) + c C(l) + m M(l) + y Y(l)), seen under a light.
 * @param base density of all that is not image dye: clear base and stain
 */
export type MakeDyeModel = (dyes: DyeSet, base: Spectrum, light: FilmLight) => DyeModel;

// Names of this module's own: what another one exports is looked up at every use.
const count = curveLength;
const { cyan: cyanAt, magenta: magentaAt, yellow: yellowAt } = curveStarts;

/** Transmittance of the dyes at each wavelength. */
const through = new Float64Array(count);

function fillThrough(curves: Float64Array, cyan: number, magenta: number, yellow: number): void {
  for (let i = 0; i < count; i++)
    through[i] = powerOfSteps(
      cyan * curves[cyanAt + i] + magenta * curves[magentaAt + i] + yellow * curves[yellowAt + i],
    );
}

/** The sum of `through` by a channel's weights: of every other wavelength, twice, as the compiled loops take it. */
function sumOf(curves: Float64Array, weights: number): number {
  let even = 0;
  let odd = 0;
  for (let i = 0; i < count; i += 2) {
    even += through[i] * curves[weights + i];
    odd += through[i + 1] * curves[weights + i + 1];
  }
  return even + odd;
}

/** The same, and its three slopes by amount. Twelve sums of all channels would be more than a processor holds. */
function sumChannel(curves: Float64Array, channel: number, weights: number, out: Float64Array): void {
  let value = 0;
  let byCyan = 0;
  let byMagenta = 0;
  let byYellow = 0;
  let value1 = 0;
  let byCyan1 = 0;
  let byMagenta1 = 0;
  let byYellow1 = 0;
  for (let i = 0; i < count; i += 2) {
    const part = through[i] * curves[weights + i];
    value += part;
    byCyan += part * curves[cyanAt + i];
    byMagenta += part * curves[magentaAt + i];
    byYellow += part * curves[yellowAt + i];
    const next = through[i + 1] * curves[weights + i + 1];
    value1 += next;
    byCyan1 += next * curves[cyanAt + i + 1];
    byMagenta1 += next * curves[magentaAt + i + 1];
    byYellow1 += next * curves[yellowAt + i + 1];
  }
  out[channel] = value + value1;
  out[3 + 3 * channel] = perStep * (byCyan + byCyan1);
  out[4 + 3 * channel] = perStep * (byMagenta + byMagenta1);
  out[5 + 3 * channel] = perStep * (byYellow + byYellow1);
}

/** The plain way: the reference, and what is left where a machine has no SIMD. */
export const dyeModel: MakeDyeModel = (dyes, base, light) => {
  const curves = dyeCurves(dyes, base, light);
  const { red, green, blue } = curveStarts;
  return {
    light(cyan, magenta, yellow, out) {
      fillThrough(curves, cyan, magenta, yellow);
      out[0] = sumOf(curves, red);
      out[1] = sumOf(curves, green);
      out[2] = sumOf(curves, blue);
    },
    lightAndSlopes(cyan, magenta, yellow, out) {
      fillThrough(curves, cyan, magenta, yellow);
      sumChannel(curves, 0, red, out);
      sumChannel(curves, 1, green, out);
      sumChannel(curves, 2, blue, out);
    },
  };
};

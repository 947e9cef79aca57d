import type { Spectrum } from '../colour/spectrum.js';
import { fastExp } from '../maths/exponential.js';
import { transmittanceOf } from './density.js';
import type { DyeSet } from './dye-sets/dye-set.js';
import { type FilmLight, filmWavelengths } from './film-light.js';

/** What a light becomes behind given amounts of three dyes: Beer-Lambert on every wavelength, then the observer. */
export interface DyeModel {
  /**
   * Linear red green blue behind the film, open gate 1 1 1.
   * @param cyan amounts of dye, 1 = peak density 1
   * @param out receives three numbers
   */
  light(cyan: number, magenta: number, yellow: number, out: Float64Array): void;
  /** The same, and behind it the nine slopes by amount: dR/dc dR/dm dR/dy dG/dc ... dB/dy. */
  lightAndSlopes(cyan: number, magenta: number, yellow: number, out: Float64Array): void;
}

const count = filmWavelengths;

/**
 * The curves of dyes and channels one after the other, each `count` long: what a density of 1 of cyan, magenta, yellow
 * takes from the light, as exponents of e; the observer's weights of red, green, blue behind all that is not image dye.
 */
function curves(dyes: DyeSet, base: Spectrum, light: FilmLight): Float64Array {
  const table = new Float64Array(6 * count);
  [dyes.cyan, dyes.magenta, dyes.yellow].forEach((dye, k) => {
    for (let i = 0; i < count; i++) table[k * count + i] = -Math.LN10 * dye[i];
  });
  [light.red, light.green, light.blue].forEach((channel, k) => {
    for (let i = 0; i < count; i++) table[(3 + k) * count + i] = transmittanceOf(base[i]) * channel[i];
  });
  return table;
}

/** Light of three channels through three dyes. */
function lightThrough(table: Float64Array, cyan: number, magenta: number, yellow: number, out: Float64Array) {
  let r = 0;
  let g = 0;
  let b = 0;
  for (let i = 0; i < count; i++) {
    const t = fastExp(cyan * table[i] + magenta * table[count + i] + yellow * table[2 * count + i]);
    r += t * table[3 * count + i];
    g += t * table[4 * count + i];
    b += t * table[5 * count + i];
  }
  out[0] = r;
  out[1] = g;
  out[2] = b;
}

/** Transmittance of the dyes at each wavelength, for the sums that follow. */
const through = new Float64Array(count);

function fillThrough(table: Float64Array, cyan: number, magenta: number, yellow: number): void {
  for (let i = 0; i < count; i++)
    through[i] = fastExp(cyan * table[i] + magenta * table[count + i] + yellow * table[2 * count + i]);
}

/** One channel of `through` and its three slopes. Twelve sums in one loop would be more than a processor holds. */
function sumChannel(table: Float64Array, channel: 0 | 1 | 2, out: Float64Array): void {
  const weights = (3 + channel) * count;
  let value = 0;
  let byCyan = 0;
  let byMagenta = 0;
  let byYellow = 0;
  for (let i = 0; i < count; i++) {
    const part = through[i] * table[weights + i];
    value += part;
    byCyan += part * table[i];
    byMagenta += part * table[count + i];
    byYellow += part * table[2 * count + i];
  }
  out[channel] = value;
  out[3 + 3 * channel] = byCyan;
  out[4 + 3 * channel] = byMagenta;
  out[5 + 3 * channel] = byYellow;
}

/**
 * T(l) = 10^-(base(l) + c C(l) + m M(l) + y Y(l)), seen under a light.
 * @param base density of all that is not image dye: clear base and stain
 */
export function dyeModel(dyes: DyeSet, base: Spectrum, light: FilmLight): DyeModel {
  const table = curves(dyes, base, light);
  return {
    light: (cyan, magenta, yellow, out) => lightThrough(table, cyan, magenta, yellow, out),
    lightAndSlopes(cyan, magenta, yellow, out) {
      fillThrough(table, cyan, magenta, yellow);
      sumChannel(table, 0, out);
      sumChannel(table, 1, out);
      sumChannel(table, 2, out);
    },
  };
}

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

/** Dye curves and channel weights side by side, six numbers a wavelength, so that one pass reads them in order. */
function interleave(dyes: DyeSet, base: Spectrum, light: FilmLight): Float64Array {
  const table = new Float64Array(6 * filmWavelengths);
  for (let i = 0; i < filmWavelengths; i++) {
    const through = transmittanceOf(base[i]);
    table.set([-Math.LN10 * dyes.cyan[i], -Math.LN10 * dyes.magenta[i], -Math.LN10 * dyes.yellow[i]], 6 * i);
    table.set([through * light.red[i], through * light.green[i], through * light.blue[i]], 6 * i + 3);
  }
  return table;
}

/**
 * T(l) = 10^-(base(l) + c C(l) + m M(l) + y Y(l)), seen under a light.
 * @param base density of all that is not image dye: clear base and stain
 */
export function dyeModel(dyes: DyeSet, base: Spectrum, light: FilmLight): DyeModel {
  const table = interleave(dyes, base, light);
  return {
    light(cyan, magenta, yellow, out) {
      let r = 0;
      let g = 0;
      let b = 0;
      for (let i = 0; i < table.length; i += 6) {
        const t = fastExp(cyan * table[i] + magenta * table[i + 1] + yellow * table[i + 2]);
        r += t * table[i + 3];
        g += t * table[i + 4];
        b += t * table[i + 5];
      }
      out[0] = r;
      out[1] = g;
      out[2] = b;
    },
    lightAndSlopes(cyan, magenta, yellow, out) {
      let r = 0;
      let g = 0;
      let b = 0;
      let rc = 0;
      let rm = 0;
      let ry = 0;
      let gc = 0;
      let gm = 0;
      let gy = 0;
      let bc = 0;
      let bm = 0;
      let by = 0;
      for (let i = 0; i < table.length; i += 6) {
        const c = table[i];
        const m = table[i + 1];
        const y = table[i + 2];
        const t = fastExp(cyan * c + magenta * m + yellow * y);
        const tr = t * table[i + 3];
        const tg = t * table[i + 4];
        const tb = t * table[i + 5];
        r += tr;
        rc += tr * c;
        rm += tr * m;
        ry += tr * y;
        g += tg;
        gc += tg * c;
        gm += tg * m;
        gy += tg * y;
        b += tb;
        bc += tb * c;
        bm += tb * m;
        by += tb * y;
      }
      out[0] = r;
      out[1] = g;
      out[2] = b;
      out[3] = rc;
      out[4] = rm;
      out[5] = ry;
      out[6] = gc;
      out[7] = gm;
      out[8] = gy;
      out[9] = bc;
      out[10] = bm;
      out[11] = by;
    },
  };
}

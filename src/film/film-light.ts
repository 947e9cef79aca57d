import { observer } from '../colour/observer.js';
import { primaries } from '../colour/primaries/index.js';
import { rgbToXyz } from '../colour/primaries/rgb-matrix.js';
import { grid, type Spectrum } from '../colour/spectrum.js';
import { invert3, transform3, type Triple } from '../maths/matrix3.js';

/** Film is reckoned from 380 to 730 nm: beyond, the observer sees less than 0.04 % of any lamp. */
export const filmWavelengths = (730 - grid.startNm) / grid.stepNm + 1;

/**
 * How much each wavelength of film transmittance adds to red, green and blue: the CIE 1931 observer under a light,
 * in BT.2020 primaries, balanced so that the open gate is 1 1 1.
 */
export interface FilmLight {
  readonly red: Spectrum;
  readonly green: Spectrum;
  readonly blue: Spectrum;
  /** Linear BT.2020 of the open gate before the balance, its luminance 1. */
  readonly openGate: Triple;
}

/** @param power relative spectral power of the light, behind its heat filter */
export function filmLight(power: Spectrum): FilmLight {
  const toRgb = invert3(rgbToXyz(primaries.bt2020));
  const weights = [0, 1, 2].map(() => new Float64Array(filmWavelengths));
  const sums = [0, 0, 0];
  let luminance = 0;
  for (let i = 0; i < filmWavelengths; i++) {
    const rgb = transform3(toRgb, [observer.x[i], observer.y[i], observer.z[i]]);
    luminance += power[i] * observer.y[i];
    for (let k = 0; k < 3; k++) {
      weights[k][i] = power[i] * rgb[k];
      sums[k] += weights[k][i];
    }
  }
  weights.forEach((channel, k) => channel.forEach((value, i) => (channel[i] = value / sums[k])));
  return {
    red: weights[0],
    green: weights[1],
    blue: weights[2],
    openGate: [sums[0] / luminance, sums[1] / luminance, sums[2] / luminance],
  };
}

/** The least of a colour, linear BT.2020 at luminance 1, that a light for film must have. A radiator of 1500 K has 0.03 of blue. */
const leastOfAColour = 0.001;

/** Whether a light has red, green and blue: before a sodium lamp, film has no colours to reckon with. */
export const showsColours = ({ openGate }: FilmLight): boolean =>
  openGate.every((value) => value > leastOfAColour);

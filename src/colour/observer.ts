import { cie1931 } from '../../shared/tables/cie-1931-observer.js';
import type { Triple } from '../maths/matrix3.js';
import { resampleToGrid, type Spectrum } from './spectrum.js';

const onGrid = (values: readonly number[]) => resampleToGrid(cie1931.startNm, cie1931.stepNm, values);

/** The CIE 1931 2-degree colour-matching functions on the grid (ISO/CIE 11664-1:2019). */
export const observer: { readonly x: Spectrum; readonly y: Spectrum; readonly z: Spectrum } = {
  x: onGrid(cie1931.xbar),
  y: onGrid(cie1931.ybar),
  z: onGrid(cie1931.zbar),
};

/**
 * Tristimulus values of a light: the sum over the grid, without the width of a step, so that only ratios mean something.
 * @param power relative spectral power
 */
export function xyzOf(power: Spectrum): Triple {
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < power.length; i++) {
    x += power[i] * observer.x[i];
    y += power[i] * observer.y[i];
    z += power[i] * observer.z[i];
  }
  return [x, y, z];
}

/**
 * Tristimulus values of light that has passed a film or come off a surface; the light alone has Y = 1.
 * @param transmittance 0..1 (or reflectance) @param light relative spectral power of the light
 */
export function xyzOfTransmittance(transmittance: Spectrum, light: Spectrum): Triple {
  const [x, y, z] = xyzOf(transmittance.map((share, i) => share * light[i]));
  const whole = xyzOf(light)[1];
  return [x / whole, y / whole, z / whole];
}

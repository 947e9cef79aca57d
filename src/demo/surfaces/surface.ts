import type { ReflectanceCurve } from '../../../shared/demo/reflectances/index.js';
import { fromFunction, type Spectrum } from '../../colour/spectrum.js';
import type { Triple } from '../../maths/matrix3.js';
import { layerExposures } from '../stock/sensitivities.js';
import type { SceneLight } from './light.js';

/** A reflectance curve on the wavelength grid, 0..1. */
export function reflectance({ level, rises = [], bands = [] }: ReflectanceCurve): Spectrum {
  return fromFunction((nm) => {
    const risen = rises.reduce(
      (sum, [height, at, width]) => sum + height / (1 + Math.exp((at - nm) / width)),
      0,
    );
    const banded = bands.reduce(
      (sum, [height, peak, width]) => sum + height * Math.exp(-0.5 * ((nm - peak) / width) ** 2),
      0,
    );
    return Math.min(1, Math.max(0, level + risen + banded));
  });
}

/**
 * What a surface exposes the three layers to under each light of a scene at luminance 1. Spectra are summed here, once
 * a surface; painters only weigh these nine numbers.
 */
export interface Surface {
  readonly sun: Triple;
  readonly sky: Triple;
  readonly bounce: Triple;
}

/** @param spectrum reflectance 0..1 on the grid */
export function surfaceUnder({ sun, sky, bounce }: SceneLight, spectrum: Spectrum): Surface {
  const under = (light: Spectrum) => layerExposures(light.map((value, i) => value * spectrum[i]));
  return { sun: under(sun), sky: under(sky), bounce: under(bounce) };
}

/** Three exposures to write into. */
export type Exposure = Float64Array;

/** Exposure of a surface under weighed lights. */
export function lit(out: Exposure, surface: Surface, sun: number, sky: number, bounce = 0): void {
  for (let k = 0; k < 3; k++)
    out[k] = sun * surface.sun[k] + sky * surface.sky[k] + bounce * surface.bounce[k];
}

/** Two surfaces laid side by side too fine to see: `share` of the second. */
export function blendSurfaces(a: Surface, b: Surface, share: number): Surface {
  const mix = (x: Triple, y: Triple): Triple => [
    x[0] + share * (y[0] - x[0]),
    x[1] + share * (y[1] - x[1]),
    x[2] + share * (y[2] - x[2]),
  ];
  return { sun: mix(a.sun, b.sun), sky: mix(a.sky, b.sky), bounce: mix(a.bounce, b.bounce) };
}

/** Moves an exposure a share of the way to another. */
export function towards(out: Exposure, other: ArrayLike<number>, share: number): void {
  for (let k = 0; k < 3; k++) out[k] += share * (other[k] - out[k]);
}

export function scale(out: Exposure, factor: number): void {
  for (let k = 0; k < 3; k++) out[k] *= factor;
}

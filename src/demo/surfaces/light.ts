import { daylight } from '../../colour/illuminants/daylight.js';
import { illuminants } from '../../colour/illuminants/index.js';
import { planck } from '../../colour/illuminants/planck.js';
import { xyzOf } from '../../colour/observer.js';
import type { Spectrum } from '../../colour/spectrum.js';

/** The same light with luminance 1 (the observer's sum over the grid). */
function ofUnitLuminance(power: Spectrum): Spectrum {
  const luminance = xyzOf(power)[1];
  return power.map((value) => value / luminance);
}

/** What lights a scene: three lights, each of luminance 1, that a painter weighs for every point. */
export interface SceneLight {
  readonly sun: Spectrum;
  readonly sky: Spectrum;
  /** Sunlight that has come off the ground and walls once. */
  readonly bounce: Spectrum;
}

/**
 * @param sunKelvin correlated colour temperature of the direct sun, 4000..25000 K
 * @param skyKelvin of the light of the sky, 4000..25000 K
 * @param ground reflectance of what the bounce comes off
 */
export function sceneLight(sunKelvin: number, skyKelvin: number, ground: Spectrum): SceneLight {
  const sun = ofUnitLuminance(daylight(sunKelvin));
  return {
    sun,
    sky: ofUnitLuminance(daylight(skyKelvin)),
    bounce: ofUnitLuminance(sun.map((value, i) => value * ground[i])),
  };
}

/** Light of the sky in one direction, luminance 1: daylight of a colour temperature. */
export const skyRadiance = (kelvin: number): Spectrum => ofUnitLuminance(daylight(kelvin));

/** Light of a filament lamp behind a window, luminance 1. */
export const lampRadiance = (kelvin: number): Spectrum => ofUnitLuminance(planck(kelvin));

/** The light that the film is balanced for, luminance 1: under it a grey surface exposes the three layers alike. */
export const balanceLight: Spectrum = ofUnitLuminance(illuminants.d55.spectrum);

import { reflectances } from '../../../shared/demo/reflectances/index.js';
import type { Triple } from '../../maths/matrix3.js';
import { length3 } from '../drawing/length.js';
import type { Viewpoint } from '../drawing/perspective.js';
import type { BodyLight } from '../drawing/relief-light.js';
import { layerExposures } from '../stock/sensitivities.js';
import { sceneLight, skyRadiance } from '../surfaces/light.js';
import { paletteUnder } from '../surfaces/palette.js';
import { reflectance } from '../surfaces/surface.js';

/** A summer noon by the water: high sun over the left shoulder, blue sky, light thrown up by the quay. */
export const view: Viewpoint = { focal: 1.3, horizon: 0.4, eye: 1.6 };

/** Water lies this far below the quay, metres. */
export const waterLevel = -1.2;

export const palette = paletteUnder(sceneLight(5250, 10500, reflectance(reflectances.brickPale)));

const unit = ([x, y, z]: Triple): Triple => {
  const length = length3(x, y, z);
  return [x / length, y / length, z / length];
};

export const daylight: BodyLight = { toSun: unit([-0.6, 0.62, 0.52]), sun: 0.98, sky: 0.25, bounce: 0.16 };

/** Exposures of the sky: overhead, halfway and at the horizon; haze before far things. */
export const skyTones = {
  high: layerExposures(skyRadiance(24000)),
  middle: layerExposures(skyRadiance(15000)),
  low: layerExposures(skyRadiance(7600)),
} as const;

export const haze = skyTones.low.map((value, k) => 0.42 * value + 0.1 * skyTones.middle[k]);

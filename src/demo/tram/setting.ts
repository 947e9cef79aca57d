import { reflectances } from '../../../shared/demo/reflectances/index.js';
import type { Triple } from '../../maths/matrix3.js';
import { length3 } from '../drawing/length.js';
import { smoothStep } from '../drawing/noise.js';
import type { Viewpoint } from '../drawing/perspective.js';
import type { BodyLight } from '../drawing/relief-light.js';
import { layerExposures } from '../stock/sensitivities.js';
import { lampRadiance, sceneLight, skyRadiance } from '../surfaces/light.js';
import { paletteUnder } from '../surfaces/palette.js';
import { reflectance } from '../surfaces/surface.js';

/** A winter afternoon: low sun over the left shoulder, a sky of thin blue-grey cloud, light thrown up by snow. */
export const view: Viewpoint = { focal: 1.2, horizon: 0.45, eye: 1.6 };

export const palette = paletteUnder(sceneLight(4750, 8600, reflectance(reflectances.snow)));

const unit = ([x, y, z]: Triple): Triple => {
  const length = length3(x, y, z);
  return [x / length, y / length, z / length];
};

export const daylight: BodyLight = { toSun: unit([-0.6, 0.4, 0.68]), sun: 1.12, sky: 0.34, bounce: 0.24 };

export const skyTones = {
  high: layerExposures(skyRadiance(9500)),
  low: layerExposures(skyRadiance(6600)),
  blue: layerExposures(skyRadiance(17000)),
} as const;

/** Light of filament lamps behind windows. */
export const lampLight = layerExposures(lampRadiance(2750));

export const haze = skyTones.high.map((value, k) => 0.4 * value + 0.16 * skyTones.low[k]);

/** The tram: front, length, sides and roof, metres. */
export const tramBody = { front: 8.8, back: 20, left: -4.45, right: -2.2, roof: 3.3 } as const;

/** The row of houses to the right. */
export const housesAt = 4.6;

/** Share of the sun that the tram lets past to a place: 1 free, 0 in its shadow, soft at the edge. */
export function pastTram(X: number, Y: number, Z: number): number {
  const [sx, sy, sz] = daylight.toSun;
  const { front, back, left, right, roof } = tramBody;
  const enter = Math.max((X - right) / -sx, (Z - back) / sz, 0.01);
  const leave = Math.min((X - left) / -sx, (Z - front) / sz, (roof - Y) / sy);
  return 1 - smoothStep(-0.02, 0.35, leave - enter);
}

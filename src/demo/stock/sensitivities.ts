import type { Spectrum } from '../../colour/spectrum.js';
import { bands } from '../../film/dye-sets/bands.js';
import type { Triple } from '../../maths/matrix3.js';
import { balanceLight } from '../surfaces/light.js';

/**
 * Relative spectral sensitivity of the three layers of a daylight reversal film. Source: curves of our own, drawn from
 * memory of the trade (blue below 500 nm, green about 545 nm, red ending near 690 nm); measured from no stock.
 */
const layers: readonly Spectrum[] = [
  bands([1, 645, 36, 18], [0.06, 560, 30, 30]),
  bands([1, 548, 27, 22], [0.05, 470, 25, 25]),
  bands([1, 440, 32, 28]),
];

const weights = layers.map((layer) => {
  const whole = layer.reduce((sum, value, i) => sum + value * balanceLight[i], 0);
  return layer.map((value) => value / whole);
});

/**
 * Exposure of the red-, green- and blue-sensitive layers.
 * @param power spectral power; the balance light at luminance 1 off a perfect white exposes 1 1 1
 */
export function layerExposures(power: Spectrum): Triple {
  const [r, g, b] = weights.map((layer) => layer.reduce((sum, value, i) => sum + value * power[i], 0));
  return [r, g, b];
}

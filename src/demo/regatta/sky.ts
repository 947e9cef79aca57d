import { type Layer, paint } from '../drawing/layer.js';
import { fractalNoise, mix, smoothStep } from '../drawing/noise.js';
import { type Exposure, lit, towards } from '../surfaces/surface.js';
import { palette, skyTones, view } from './setting.js';

/** The clear sky at a height above the horizon, frame heights. */
export function clearSky(height: number, out: Exposure): void {
  const low = Math.exp(-Math.max(0, height) / 0.11);
  const high = smoothStep(0.05, 0.5, height);
  for (let k = 0; k < 3; k++) {
    const blue = mix(0.38 * skyTones.middle[k], 0.24 * skyTones.high[k], high);
    out[k] = mix(blue, 0.62 * skyTones.low[k], low);
  }
}

/** How much cloud lies in a direction: heaped up in a bank that ends towards the top. */
function cloudAt(x: number, height: number): number {
  const lift = 0.62 * fractalNoise(1.9 * x + 4.1, 2.6 * height, 2) + 0.38;
  const shape = fractalNoise(4.6 * x + 1.7, 7.5 * height + 9.2, 6);
  return shape * 0.9 + 0.22 * lift - 0.5 * Math.abs(height - 0.17);
}

const threshold = 0.55;

/** Summer sky with heaped clouds that the sun lights from the upper left, and thin veils high up. */
export function paintSky(layer: Layer): void {
  const cloud = new Float64Array(3);
  paint(layer, [-9, -9, 9, view.horizon + 0.03], (x, y, out) => {
    const height = view.horizon - y;
    clearSky(height, out);
    const veil = smoothStep(0.5, 0.8, fractalNoise(1.3 * x + 0.7 * y, 6.5 * y + 0.8 * x + 3, 4));
    lit(cloud, palette.cloud, 0.55, 0.3);
    towards(out, cloud, 0.22 * veil);
    const amount = cloudAt(x, height);
    const cover = smoothStep(threshold, threshold + 0.1, amount);
    if (cover > 0) {
      const towardsSun = cloudAt(x - 0.022, height + 0.03);
      const bright = smoothStep(-0.1, 0.12, amount - towardsSun);
      const thick = smoothStep(threshold, threshold + 0.26, amount);
      lit(cloud, palette.cloud, mix(0.4, 1.06, bright) * (1 - 0.35 * thick * (1 - bright)), 0.2);
      const far = Math.exp(-height / 0.07);
      towards(cloud, out, 0.55 * far);
      towards(out, cloud, cover * (0.92 - 0.25 * far));
    }
    return 1;
  });
}

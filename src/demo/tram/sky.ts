import { type Layer, paint } from '../drawing/layer.js';
import { fractalNoise, mix, smoothStep } from '../drawing/noise.js';
import { skyTones, view } from './setting.js';

/** Winter cloud in sheets, thin enough to be blue in places, brighter towards the sun and the horizon. */
export function paintSky(layer: Layer): void {
  paint(layer, [-9, -9, 9, view.horizon + 0.12], (x, y, out) => {
    const height = Math.max(0.004, view.horizon - y);
    const sheet = fractalNoise(1.6 * x + 0.22 / (height + 0.1), 4.2 * height + 0.5 * x + 2, 5);
    const torn = fractalNoise(3.4 * x + 8, 8 * height + 1.2 * x, 4);
    const open = smoothStep(0.46, 0.62, 0.65 * sheet + 0.35 * torn) * smoothStep(0.02, 0.2, height);
    const low = Math.exp(-height / 0.16);
    const glow = 0.16 * smoothStep(0.9, -0.7, x);
    for (let k = 0; k < 3; k++) {
      const cloud = mix(0.46 * skyTones.high[k], 0.64 * skyTones.low[k], low) * (0.8 + 0.45 * torn + glow);
      out[k] = mix(cloud, 0.3 * skyTones.blue[k] + 0.05 * skyTones.high[k], 0.8 * open);
    }
    return 1;
  });
}

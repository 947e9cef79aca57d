import { type Layer, lookUp, paint } from '../drawing/layer.js';
import { clamp01, fractalNoise, mix, noise, smoothStep } from '../drawing/noise.js';
import { type Exposure, lit, scale, towards } from '../surfaces/surface.js';
import { daylight, haze, palette, view } from './setting.js';
import { clearSky } from './sky.js';

/** Slope of the water towards the viewer at a place of the frame, about -0.5..0.5: finer and flatter far away. */
export function ripple(x: number, below: number): number {
  const size = 1 / (below + 0.045);
  const across = 5.2 * x * size;
  const along = 13 * Math.log(below + 0.02);
  const swell = fractalNoise(0.6 * across + 3, 0.75 * along, 2) - 0.5;
  const waves = fractalNoise(across, 1.7 * along + 0.25 * across, 3) - 0.5;
  return 0.55 * swell + 0.95 * waves;
}

/** Harbour water under a slope: the sky it mirrors, and the green light that comes back out of it. */
function waterColour(below: number, slope: number, out: Exposure): void {
  const grazing = clamp01(below / view.focal + 0.12 + 0.55 * Math.max(-0.2, slope));
  const mirrored = 0.03 + 0.97 * (1 - grazing) ** 5.2;
  clearSky(0.04 + 0.9 * grazing, out);
  const body = mix(0.75, 1.25, clamp01(0.5 + slope));
  for (let k = 0; k < 3; k++)
    out[k] =
      mirrored * out[k] +
      (1 - mirrored) *
        body *
        (daylight.sun * palette.harbourWater.sun[k] + 0.3 * palette.harbourWater.sky[k]);
}

/** Water from the far shore to the quay, mirroring what has been painted above it. */
export function paintWater(layer: Layer): void {
  const mirror = new Float64Array(3);
  const sparkle = new Float64Array(3);
  lit(sparkle, palette.white, 2.4, 0.3);
  paint(layer, [-9, view.horizon + 0.004, 9, 0.84], (x, y, out) => {
    const below = y - view.horizon;
    const slope = ripple(x, below);
    waterColour(below, slope, out);
    const shiver = 0.05 * slope + 0.02 * (noise(60 * x, 30 * y) - 0.5);
    const up = view.horizon - below * 1.05 - Math.abs(shiver) * 0.8;
    if (lookUp(layer, x + 0.35 * shiver, up, mirror) > 0.5) {
      const grazing = Math.exp(-below / 0.13);
      towards(out, mirror, clamp01(0.72 * grazing * (1 - 0.9 * slope)));
    }
    const gust = smoothStep(0.42, 0.66, fractalNoise(1.6 * x + 5, 9 * below + 2, 3));
    scale(out, 1 - 0.22 * gust);
    towards(out, haze, 0.55 * Math.exp(-below / 0.02));
    const glint = noise(150 * x * (0.35 / (below + 0.16)), 620 * Math.log(below + 0.1));
    const crest = smoothStep(0.1, 0.3, slope) * smoothStep(0.86, 0.97, glint);
    towards(out, sparkle, 0.85 * crest * (0.35 + 0.65 * smoothStep(0.35, -0.5, x)));
    return smoothStep(0, 0.004, below - 0.004);
  });
}

/** Mirrors a part (a boat, say) in the water below the line on which it floats. */
export function paintReflection(layer: Layer, part: Layer, waterline: number, reach: number): void {
  const mirror = new Float64Array(3);
  const left = part.frameX + part.left / part.scale;
  const right = left + part.width / part.scale;
  paint(layer, [left - 0.03, waterline, right + 0.03, waterline + reach], (x, y, out) => {
    const down = y - waterline;
    const slope = ripple(x, y - view.horizon);
    const broken = 0.012 + 0.12 * down;
    const cover = lookUp(
      part,
      x + slope * broken,
      waterline - down * 0.92 + slope * (0.06 + 0.25 * down),
      mirror,
    );
    if (cover <= 0) return 0;
    for (let k = 0; k < 3; k++) out[k] = (0.8 * mirror[k]) / cover;
    const patchy = clamp01(0.85 - 1.2 * Math.abs(slope) - (0.55 * down) / reach);
    return cover * patchy * smoothStep(reach, 0.6 * reach, down) * 0.8;
  });
}

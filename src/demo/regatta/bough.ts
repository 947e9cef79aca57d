import { seededRandom } from '../../maths/random.js';
import { edge, type Layer, paint, pixelOf } from '../drawing/layer.js';
import { clamp01, noise } from '../drawing/noise.js';
import { boundsOf, onCurve, type Point, toStroke } from '../drawing/shapes.js';
import { blendSurfaces, lit, scale } from '../surfaces/surface.js';
import { daylight, palette } from './setting.js';

interface Twig {
  readonly from: Point;
  readonly by: Point;
  readonly to: Point;
  readonly thick: number;
}

const twigs: readonly Twig[] = [
  { from: [0.7, -0.02], by: [0.55, 0.02], to: [0.36, 0.075], thick: 0.006 },
  { from: [0.62, 0.0], by: [0.56, 0.06], to: [0.5, 0.135], thick: 0.004 },
  { from: [0.69, 0.04], by: [0.64, 0.1], to: [0.59, 0.2], thick: 0.004 },
  { from: [0.52, 0.02], by: [0.45, 0.0], to: [0.37, -0.005], thick: 0.003 },
];

/** A leaf: pointed at both ends, creased along the middle, facing its own way. */
function paintLeaf(layer: Layer, at: Point, angle: number, long: number, turn: number, hue: number): void {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const pixel = pixelOf(layer);
  const surface = blendSurfaces(palette.leafSunny, palette.leafYellowish, hue);
  const facing = clamp01(0.5 + 0.5 * Math.sin(turn));
  // A leaf turned from the viewer's side of the sun glows with the light that comes through.
  const through = facing < 0.35 ? 1.25 : 1;
  paint(layer, [at[0] - long, at[1] - long, at[0] + long, at[1] + long], (x, y, out) => {
    const u = ((x - at[0]) * cos + (y - at[1]) * sin) / long;
    const v = ((y - at[1]) * cos - (x - at[0]) * sin) / long;
    if (u < 0 || u > 1) return 0;
    const half = 0.26 * Math.sin(Math.PI * u ** 0.8) * (0.45 + 0.55 * Math.abs(Math.cos(turn)));
    const side = v > 0 ? 0.82 : 1.12;
    const sun = daylight.sun * (0.25 + 0.85 * facing) * side * through;
    lit(out, surface, sun * (0.9 + 0.2 * noise(300 * x, 300 * y)), daylight.sky * 1.1, 0.1);
    const vein = clamp01(1 - Math.abs(v) * 60);
    scale(out, 1 + 0.22 * vein);
    return edge((Math.abs(v) - half) * long, 1.4 * pixel);
  });
}

/** A bough of a tree on the quay that hangs into the picture at the upper right. */
export function paintBough(layer: Layer): void {
  const random = seededRandom(515);
  const pixel = pixelOf(layer);
  for (const { from, by, to, thick } of twigs)
    for (let i = 0; i < 12; i++) {
      const a = onCurve(from, by, to, i / 12);
      const b = onCurve(from, by, to, (i + 1) / 12);
      paint(layer, boundsOf([a, b], thick), (x, y, out) => {
        lit(out, palette.bark, daylight.sun * 0.45, daylight.sky, 0.08);
        return edge(toStroke(x, y, a, b, 0.5 * thick * (1 - i / 14)), pixel);
      });
    }
  for (let i = 0; i < 230; i++) {
    const { from, by, to } = twigs[i % twigs.length];
    const [x, y] = onCurve(from, by, to, random());
    const at: Point = [x + 0.075 * (random() - 0.5), y + 0.06 * (random() - 0.42)];
    const angle = 1.2 + 1.9 * (random() - 0.35);
    paintLeaf(layer, at, angle, 0.026 + 0.014 * random(), 6.3 * random(), 0.55 * random());
  }
}

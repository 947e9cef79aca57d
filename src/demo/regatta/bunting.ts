import { edge, type Layer, paint, pixelOf } from '../drawing/layer.js';
import { clamp01, noise, smoothStep } from '../drawing/noise.js';
import { boundsOf, onCurve, type Point, toPolygon, toStroke } from '../drawing/shapes.js';
import { lit, scale } from '../surfaces/surface.js';
import { daylight, palette } from './setting.js';

const cloths = [palette.red, palette.white, palette.blue, palette.yellow, palette.green, palette.rose];

/** One flag of the string: a triangle of cloth, waving, some of the light coming through it. */
function paintFlag(layer: Layer, at: Point, wide: number, high: number, sway: number, index: number): void {
  const corners: Point[] = [
    [at[0] - wide / 2, at[1]],
    [at[0] + wide / 2, at[1] + 0.1 * wide * sway],
    [at[0] + 0.5 * sway * wide, at[1] + high],
  ];
  const cloth = cloths[index % cloths.length];
  const pixel = pixelOf(layer);
  paint(layer, boundsOf(corners, pixel), (x, y, out) => {
    const u = (x - at[0]) / wide;
    const wave = Math.sin(7 * u + 3 * sway + index) * 0.5 + 0.35 * (noise(90 * x, 60 * y) - 0.5);
    lit(out, cloth, daylight.sun * clamp01(0.72 + 0.38 * wave), daylight.sky * 0.9, 0.06);
    const hem = smoothStep(0.004, 0.001, y - at[1]);
    scale(out, 1 - 0.25 * hem);
    return edge(toPolygon(x, y, corners), pixel);
  });
}

/** Strings of flags from the house across the quay. */
export function paintBunting(layer: Layer): void {
  const pixel = pixelOf(layer);
  const strings: readonly (readonly [Point, Point, Point, number])[] = [
    [[-0.36, 0.03], [0.1, 0.17], [0.72, -0.03], 19],
    [[-0.36, 0.1], [-0.1, 0.16], [0.3, -0.06], 13],
  ];
  for (const [from, by, to, count] of strings) {
    const size = count > 15 ? 1 : 0.8;
    for (let i = 0; i < 24; i++) {
      const a = onCurve(from, by, to, i / 24);
      const b = onCurve(from, by, to, (i + 1) / 24);
      paint(layer, boundsOf([a, b], 2 * pixel), (x, y, out) => {
        lit(out, palette.plainWood, 0.5, 0.2);
        return 0.8 * edge(toStroke(x, y, a, b, 0.6 * pixel), pixel);
      });
    }
    for (let i = 0; i < count; i++) {
      const sway = 0.35 + 0.5 * (noise(2.3 * i, count) - 0.5);
      paintFlag(layer, onCurve(from, by, to, (i + 0.5) / count), 0.032 * size, 0.046 * size, sway, i + count);
    }
  }
}

/** Gulls against the sky: two bent wings each. */
export function paintGulls(layer: Layer): void {
  const pixel = pixelOf(layer);
  const gulls = [
    [-0.2, 0.2, 0.027],
    [-0.12, 0.245, 0.017],
    [0.3, 0.15, 0.022],
  ] as const;
  for (const [cx, cy, span] of gulls)
    paint(layer, [cx - span, cy - span, cx + span, cy + span], (x, y, out) => {
      const u = Math.abs(x - cx) / span;
      const lift = cx < 0 ? 0.28 : 0.2;
      const wing = cy - lift * span * Math.sin(Math.min(1, u) * 2.6) + 0.1 * span * u;
      const thick = 0.075 * span * (1 - 0.8 * u) + 0.3 * pixel;
      lit(out, palette.white, 0.75 * daylight.sun * (y < wing ? 1 : 0.5), 0.2);
      const dark = smoothStep(0.75, 0.95, u);
      scale(out, 1 - 0.8 * dark);
      return u > 1 ? 0 : edge(Math.abs(y - wing) - thick, pixel);
    });
}

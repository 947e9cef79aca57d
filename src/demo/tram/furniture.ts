import { edge, type Layer, paintFine } from '../drawing/layer.js';
import { clamp01, noise, smoothStep } from '../drawing/noise.js';
import { acrossAt, heightAt, project } from '../drawing/perspective.js';
import { toBox, toEllipse } from '../drawing/shapes.js';
import { lit } from '../surfaces/surface.js';
import { daylight, lampLight, palette, view } from './setting.js';

/** Light round a thin post, from its left to its right side (-1..1). */
const round = (across: number) => clamp01(0.55 - 0.6 * across);

/** A lamp post with a lit lantern, snow on its cap. */
function paintLampPost(layer: Layer, X: number, Z: number): void {
  const pixel = Z / (view.focal * layer.scale);
  const [left, top] = project(view, X - 1.2, 4.6, Z);
  const [right, bottom] = project(view, X + 1.2, 0, Z);
  paintFine(layer, [left, top, right, bottom], (x, y, out) => {
    const u = acrossAt(view, x, Z) - X;
    const Y = heightAt(view, y, Z);
    const thick = 0.045 + 0.05 * smoothStep(0.9, 0.2, Y) + 0.02 * smoothStep(0.04, 0, Math.abs(Y - 2.9));
    const post = Math.max(Math.abs(u) - thick, Y - 3.3, -Y);
    const glass = toBox(u, Y, -0.13 - 0.05 * (Y - 3.3), 3.3, 0.13 + 0.05 * (Y - 3.3), 3.74);
    const cap = toEllipse(u, Y, 0, 3.78, 0.23, 0.1);
    const snow = toEllipse(u, Y, 0, 3.85, 0.2, 0.09);
    const glow = Math.exp(-((u / 0.34) ** 2) - ((Y - 3.52) / 0.36) ** 2);
    if (snow < 0) lit(out, palette.snow, daylight.sun * 0.8 * round(u / 0.3), daylight.sky);
    else if (cap < 0) lit(out, palette.iron, daylight.sun * 0.6, daylight.sky);
    else if (glass < 0) for (let k = 0; k < 3; k++) out[k] = lampLight[k] * (0.5 + 0.75 * glow);
    else lit(out, palette.iron, daylight.sun * round(u / thick), daylight.sky, 0.12);
    return edge(Math.min(post, glass, cap, snow), pixel);
  });
}

/** The board of the stop: a post, a cream panel with a red band, a timetable. */
function paintStopBoard(layer: Layer, X: number, Z: number): void {
  const pixel = Z / (view.focal * layer.scale);
  const [left, top] = project(view, X - 0.5, 3, Z);
  const [right, bottom] = project(view, X + 0.5, 0, Z);
  paintFine(layer, [left, top, right, bottom], (x, y, out) => {
    const u = acrossAt(view, x, Z) - X;
    const Y = heightAt(view, y, Z);
    const post = Math.max(Math.abs(u) - 0.035, Y - 2.7, -Y);
    const board = toBox(u, Y, -0.24, 2.15, 0.24, 2.68, 0.03);
    const table = toBox(u, Y, -0.17, 1.2, 0.17, 1.65, 0.01);
    const snow = toBox(u, Y, -0.24, 2.67, 0.24, 2.74 + 0.02 * noise(9 * u, 4), 0.03);
    const drift = toEllipse(u, Y, 0, 0, 0.3, 0.09);
    const panel = Math.min(board, table);
    const line = noise(60 * u, Math.floor(Y * 26)) > 0.45 && (Y * 26) % 1 > 0.5;
    if (Math.min(snow, drift) < 0) lit(out, palette.snow, daylight.sun * 0.6, daylight.sky, 0.05);
    else if (panel < 0) {
      const inked = board < 0 ? Y > 2.5 : line && Math.abs(u) < 0.13;
      const surface = inked ? (board < 0 ? palette.paintRed : palette.charcoal) : palette.paintCream;
      lit(out, surface, daylight.sun * 0.66, daylight.sky, 0.1);
    } else lit(out, palette.iron, daylight.sun * round(u / 0.035), daylight.sky, 0.12);
    return edge(Math.min(post, panel, snow, drift), pixel);
  });
}

/** What stands along the street. */
export function paintFurniture(layer: Layer): void {
  paintLampPost(layer, 2.75, 22);
  paintLampPost(layer, 1.75, 7.4);
  paintStopBoard(layer, -0.62, 6.2);
}

import { edge, type Layer, paintFine, pixelOf } from '../drawing/layer.js';
import { clamp01, mix, noise } from '../drawing/noise.js';
import { acrossAt, heightAt, project } from '../drawing/perspective.js';
import { toBox, toEllipse } from '../drawing/shapes.js';
import { lit } from '../surfaces/surface.js';
import { house } from './quay.js';
import { daylight, palette, view } from './setting.js';

/** Striped cloth sloping out from the house, with a scalloped edge. */
export function paintAwning(layer: Layer): void {
  const [backRight, backY] = project(view, house.awningSide - 0.05, house.awningHigh, house.front);
  const [frontRight, frontY] = project(view, house.awningSide, house.awningLow, house.awningOut);
  const hang = 0.2;
  const drop = (hang * view.focal) / house.awningOut;
  const pixel = pixelOf(layer);
  paintFine(layer, [-9, backY, frontRight, frontY + drop], (x, y, out) => {
    const t = clamp01((y - backY) / (frontY - backY));
    // Depth goes with 1/Z between the two edges.
    const Z = 1 / mix(1 / house.front, 1 / house.awningOut, t);
    const X = acrossAt(view, x, Z);
    const stripe = Math.floor(X / 0.34 + 100) % 2 === 0 ? palette.sailWhite : palette.blue;
    const outside = x - mix(backRight, frontRight, t);
    if (y < frontY) {
      const sag = noise(2.1 * X, 1.5 * t) - 0.5;
      lit(out, stripe, daylight.sun * (0.92 + 0.14 * sag), 0.22, 0.02);
      return Math.min(edge(outside, pixel), edge(backY - y, pixel));
    }
    const down = (y - frontY) / drop;
    const scallop = 0.7 + 0.3 * Math.sqrt(Math.abs(Math.sin((X / 0.34) * Math.PI)));
    const wave = 0.7 + 0.3 * Math.sin(9 * X + 1.5 * Math.sin(3 * X));
    lit(out, stripe, daylight.sun * 0.62 * wave, 0.16, 0.1);
    return Math.min(edge(outside, pixel), edge((down - scallop) * drop, pixel));
  });
}

/** Under the awning: a table with a white cloth and a jug, a barrel, a bench, hardly lit. */
export function paintInShade(layer: Layer): void {
  const Z = 10.6;
  const pixel = Z / (view.focal * layer.scale);
  const [, bottom] = project(view, 0, 0, Z);
  paintFine(layer, [-9, 0.36, project(view, -3, 0, Z)[0], bottom], (x, y, out) => {
    const X = acrossAt(view, x, Z);
    const Y = heightAt(view, y, Z);
    const cloth = toBox(X, Y, -4.35, 0.35 + 0.04 * Math.sin(9 * X), -3.25, 0.78, 0.02);
    const legs = Math.min(toBox(X, Y, -4.25, 0, -4.18, 0.5), toBox(X, Y, -3.42, 0, -3.35, 0.5));
    const jug = Math.min(toEllipse(X, Y, -3.95, 0.92, 0.09, 0.13), toBox(X, Y, -4.0, 0.95, -3.9, 1.12, 0.02));
    const barrel = toBox(
      X,
      Y,
      -5.7 - 0.06 * Math.sin(Y * 3.5),
      0,
      -5.15 + 0.06 * Math.sin(Y * 3.5),
      0.85,
      0.03,
    );
    const nearest = Math.min(cloth, legs, jug, barrel);
    if (nearest > pixel) return 0;
    const fold = 0.8 + 0.3 * noise(11 * X, 1.2 * Y);
    if (nearest === cloth) lit(out, palette.white, 0, 0.12 * fold, 0.1 * fold);
    else if (nearest === jug) lit(out, palette.blue, 0, 0.2, 0.08 * (1 - (X + 4) * 4));
    else if (nearest === barrel)
      lit(
        out,
        Math.abs(((Y * 3.3) % 1) - 0.5) < 0.07 ? palette.iron : palette.plainWood,
        0,
        0.06,
        0.08 - 0.1 * (X + 5.4),
      );
    else lit(out, palette.darkWood, 0, 0.05, 0.06);
    return edge(nearest, pixel);
  });
}

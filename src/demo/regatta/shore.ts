import { crown, paintFoliage } from '../drawing/foliage.js';
import { edge, type Layer, paint, pixelOf } from '../drawing/layer.js';
import { cellRandom, fractalNoise, noise, smoothStep } from '../drawing/noise.js';
import { toBox, toPolygon } from '../drawing/shapes.js';
import { lit, scale, type Surface, towards } from '../surfaces/surface.js';
import { daylight, haze, palette, view } from './setting.js';

/** A line of hills: height above the horizon by x, how far they stand in the haze, what covers them. */
function paintHills(layer: Layer, height: (x: number) => number, share: number, surface: Surface): void {
  paint(layer, [-9, 0.2, 9, view.horizon + 0.012], (x, y, out) => {
    const up = height(x) - (view.horizon - y);
    const woods = fractalNoise(26 * x, 70 * y, 3);
    const fields = smoothStep(0.5, 0.6, noise(7 * x + 3, 34 * y));
    lit(out, surface, daylight.sun * (0.35 + 0.7 * woods), 0.15);
    scale(out, 1 + 0.7 * fields);
    towards(out, haze, share);
    return edge(-up, 1.5 * pixelOf(layer));
  });
}

/** Houses of the far town: small lit boxes with roofs, and a light tower on the mole. */
function paintTown(layer: Layer): void {
  const walls = [palette.plaster, palette.ochrePlaster, palette.brickPale, palette.paintWhite];
  const base = view.horizon + 0.006;
  for (let i = 0; i < 26; i++) {
    const x = -0.26 + 0.021 * i + 0.01 * cellRandom(i, 3);
    const w = 0.012 + 0.01 * cellRandom(i, 4);
    const h = 0.014 + 0.016 * cellRandom(i, 5) + 0.008 * Math.sin(i);
    const roof = 0.008 + 0.005 * cellRandom(i, 6);
    const wall = walls[Math.floor(4 * cellRandom(i, 8))];
    const pixel = pixelOf(layer);
    paint(layer, [x - w, base - h - roof - 0.01, x + w, base], (px, py, out) => {
      const body = toBox(px, py, x - w / 2, base - h, x + w / 2, base);
      const top = toPolygon(px, py, [
        [x - w / 2 - 0.001, base - h],
        [x - w / 4, base - h - roof],
        [x + w / 4, base - h - roof],
        [x + w / 2 + 0.001, base - h],
      ]);
      const isRoof = top < body;
      lit(out, isRoof ? palette.roofTile : wall, daylight.sun * (isRoof ? 0.9 : 0.75), 0.15);
      const u = ((px - x) / 0.0042 + 9) % 1;
      const v = ((base - py) / 0.0085 + 9) % 1;
      if (!isRoof && u > 0.35 && u < 0.7 && v > 0.3 && v < 0.75) scale(out, 0.45);
      towards(out, haze, 0.42);
      return edge(Math.min(body, top), 1.4 * pixel);
    });
  }
}

function paintLightTower(layer: Layer, x: number): void {
  const foot = view.horizon + 0.009;
  const top = foot - 0.092;
  const pixel = pixelOf(layer);
  paint(layer, [x - 0.1, top - 0.03, x + 0.1, foot], (px, py, out) => {
    const half = 0.0065 + 0.004 * ((py - top) / (foot - top));
    const shaft = Math.max(Math.abs(px - x) - half, top - py);
    const lantern = toBox(px, py, x - 0.004, top - 0.012, x + 0.004, top);
    const gallery = toBox(px, py, x - 0.0095, top - 0.002, x + 0.0095, top + 0.001);
    const mole = toBox(px, py, x - 0.1, foot - 0.008, x + 0.06, foot);
    const stripe = Math.floor((py - top) / 0.023) % 2 === 0;
    const surface =
      mole < shaft
        ? palette.granite
        : py < top
          ? palette.iron
          : stripe
            ? palette.paintRed
            : palette.paintWhite;
    const round = 0.55 - 0.45 * ((px - x) / half);
    lit(out, surface, daylight.sun * Math.max(0.1, Math.min(1, round)), 0.18);
    towards(out, haze, 0.33);
    return edge(Math.min(shaft, lantern, gallery, mole), 1.3 * pixel);
  });
}

/** Trees on the near point of land, to the right, with a strip of beach below. */
export function paintPoint(layer: Layer): void {
  const base = view.horizon + 0.052;
  paint(layer, [0.14, base - 0.05, 9, base + 0.004], (x, y, out) => {
    const line = base - 0.026 * smoothStep(0.16, 0.4, x) - 0.004 * noise(40 * x, 1);
    lit(
      out,
      y > base - 0.012 ? palette.mortar : palette.grassFar,
      daylight.sun * (0.7 + 0.4 * noise(90 * x, 160 * y)),
      0.2,
    );
    towards(out, haze, 0.16);
    return Math.min(edge(line - y, 2 * pixelOf(layer)), edge(y - base, 2 * pixelOf(layer)));
  });
  const air = { light: haze, share: 0.17 };
  const trees = [
    [0.27, 0.05, 0.055, 10],
    [0.355, 0.075, 0.075, 14],
    [0.46, 0.085, 0.105, 18],
    [0.575, 0.09, 0.12, 20],
    [0.67, 0.08, 0.14, 18],
  ] as const;
  trees.forEach(([x, rx, ry, count], i) => {
    const shade = {
      sunny: i % 2 ? palette.leafYellowish : palette.leafSunny,
      shaded: palette.leafDark,
      leaf: 0.0075,
      haze: air,
    };
    paintFoliage(layer, crown(x, base - 0.022 - ry * 0.8, rx, ry, count, 11 + i), shade, daylight);
  });
}

/** The far shore from left to right, then what stands before it. */
export function paintShore(layer: Layer): void {
  paintHills(layer, (x) => 0.04 + 0.055 * fractalNoise(1.7 * x + 0.6, 0.5, 4), 0.78, palette.grassFar);
  paintHills(
    layer,
    (x) => 0.012 + 0.05 * fractalNoise(2.6 * x + 8, 4.5, 4) * smoothStep(0.5, -0.3, x),
    0.58,
    palette.leafSunny,
  );
  paintTown(layer);
  paintLightTower(layer, -0.3);
}

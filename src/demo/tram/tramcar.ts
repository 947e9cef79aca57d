import { edge, type Layer, paint, paintFine, pixelOf } from '../drawing/layer.js';
import { length2 } from '../drawing/length.js';
import { clamp01, fractalNoise, mix, noise, smoothStep } from '../drawing/noise.js';
import { acrossAt, depthOfSide, heightAt, project } from '../drawing/perspective.js';
import { toBox, toEllipse, toStroke } from '../drawing/shapes.js';
import { type Exposure, lit, scale, type Surface, towards } from '../surfaces/surface.js';
import { daylight, haze, housesAt, lampLight, palette, tramBody, view } from './setting.js';

const { front, back, left, right, roof } = tramBody;
const middle = (left + right) / 2;
const half = (right - left) / 2;

/** Light on enamelled sheet: a little gloss of the sky comes off it. */
function paintSheet(
  out: Exposure,
  surface: Surface,
  sun: number,
  sky: number,
  bounce: number,
  mirror: number,
): void {
  lit(out, surface, sun, sky, bounce);
  for (let k = 0; k < 3; k++) out[k] += mirror * haze[k];
}

/** Windscreens: the dark inside, a lamp, the sky in the glass. */
function paintScreen(out: Exposure, u: number, v: number): void {
  lit(out, palette.glass, 0.2, 0.8 + 1.2 * smoothStep(0.1, 0.9, v));
  const lamp = Math.exp(-(((u - 0.1) / 0.5) ** 2) - ((v - 0.8) / 0.22) ** 2);
  for (let k = 0; k < 3; k++) out[k] += 0.36 * lamp * lampLight[k];
  const driver = Math.min(toEllipse(u, v, -0.22, 0.47, 0.12, 0.2), toBox(u, v, -0.5, -0.2, 0.06, 0.24, 0.1));
  if (driver < 0) scale(out, 0.35);
  const gleam = smoothStep(0.08, 0.02, Math.abs(u + 0.35 - 0.5 * v)) * 0.16;
  for (let k = 0; k < 3; k++) out[k] += gleam * haze[k];
}

/** The front of the tram, full in the sun, its corners turning away. */
function paintFront(layer: Layer): void {
  const [x1, y1] = project(view, left, roof + 0.75, front);
  const [x2, y2] = project(view, right, 0, front);
  const pixel = front / (view.focal * layer.scale);
  paintFine(layer, [x1, y1, x2, y2], (x, y, out) => {
    const X = acrossAt(view, x, front);
    const Y = heightAt(view, y, front);
    const u = (X - middle) / half;
    const bow = u * u * u;
    const length = length2(0.85 * bow, 1);
    const facing = clamp01((0.85 * bow * daylight.toSun[0] + daylight.toSun[2]) / length);
    const body = toBox(X, Y, left, 0.42, right, roof - 0.1, 0.16);
    const top = toBox(X, Y, left + 0.12, roof - 0.3, right - 0.12, roof + 0.16, 0.22);
    const snow = toBox(X, Y, left + 0.2, roof + 0.08, right - 0.2, roof + 0.24 + 0.04 * noise(3 * X, 1), 0.1);
    const sign = toBox(X, Y, middle - 0.6, 2.86, middle + 0.6, 3.22, 0.05);
    const bumper = toBox(X, Y, left + 0.15, 0.36, right - 0.15, 0.56, 0.06);
    const under = toBox(X, Y, left + 0.35, 0.06, right - 0.35, 0.5, 0.05);
    const outside = Math.min(body, top, snow, bumper, under);
    if (outside > pixel) return 0;
    const sun = daylight.sun * facing;
    const sky = daylight.sky * (0.75 + 0.2 * smoothStep(0.5, 3, Y));
    const bounce = 0.2 * smoothStep(2.4, 0.3, Y) + 0.04;
    const grime = 0.86 + 0.2 * fractalNoise(2.2 * X, 1.6 * Y, 3);
    const shade = sun * grime;
    const slat = smoothStep(0.25, 0.4, Math.abs(((Y / 0.13) % 1) - 0.5));
    if (body > 0 && top > 0 && snow > 0 && bumper > 0)
      lit(out, palette.iron, (0.1 + 0.5 * slat) * sun, 0.2, 0.12);
    else if (snow < 0 && Y > roof + 0.05) lit(out, palette.snow, sun * 0.9, sky, 0.06);
    else if (body > 0 && bumper > 0) paintSheet(out, palette.slate, sun * 0.8, sky, 0.05, 0.02);
    else if (bumper < 0 && Y > 0.53 + 0.02 * noise(5 * X, 3)) lit(out, palette.snow, sun * 0.85, sky, 0.06);
    else if (bumper < 0) paintSheet(out, palette.paintRed, shade * 0.8, sky, bounce, 0.01);
    else paintFace(out, X, Y, shade, sky, bounce, sign);
    return edge(outside, pixel);
  });
}

const rim = (distance: number, width: number) => Math.abs(distance) < width;

function paintFace(
  out: Exposure,
  X: number,
  Y: number,
  sun: number,
  sky: number,
  bounce: number,
  sign: number,
): void {
  const u = X - middle;
  const centre = toBox(u, Y, -0.4, 1.62, 0.4, 2.72, 0.07);
  const sides = toBox(Math.abs(u), Y, 0.5, 1.62, 0.98, 2.72, 0.07);
  const lamp = length2(u, Y - 1.02);
  const skirt = Y < 1.42;
  paintSheet(out, skirt ? palette.paintRed : palette.paintCream, sun, sky, bounce, skirt ? 0.012 : 0.02);
  if (rim(Y - 1.42, 0.03) || rim(Y - 0.72, 0.012))
    paintSheet(out, skirt ? palette.paintCream : palette.paintRed, sun, sky, bounce, 0.01);
  if (sign < 0) {
    lit(out, palette.charcoal, sun, sky, 0.02);
    const letters = Math.abs(Y - 3.04) < 0.08 && noise(9 * X + 2, 1.5) > 0.42 && (X * 8.5 + 100) % 1 < 0.72;
    if (letters && u > -0.25) for (let k = 0; k < 3; k++) out[k] = 0.55 * lampLight[k] + 0.1;
    const three = Math.min(
      Math.abs(length2(u + 0.42, Y - 3.1) - 0.055),
      Math.abs(length2(u + 0.42, Y - 2.985) - 0.06),
    );
    if (three < 0.02 && u > -0.45) for (let k = 0; k < 3; k++) out[k] = 0.55 * lampLight[k] + 0.1;
  } else if (Math.min(centre, sides) < 0) {
    if (Math.min(centre, sides) > -0.035) lit(out, palette.iron, sun * 0.6, sky, 0.02);
    else paintScreen(out, u / 0.9, (Y - 1.62) / 1.1);
  } else if (lamp < 0.17) {
    lit(out, palette.steel, sun * (0.8 + 0.4 * ((Y - 1.02) / 0.17)), sky, 0.05);
    if (lamp < 0.125) for (let k = 0; k < 3; k++) out[k] = 0.5 + 0.9 * lampLight[k] * (1 - lamp / 0.16);
  } else if (lamp < 0.2) lit(out, palette.iron, sun * 0.5, sky);
}

/** The long side, in the tram's own shade, lit by snow and sky; the houses mirror in its windows. */
function paintSide(layer: Layer): void {
  const [nearX, nearTop] = project(view, right, roof + 0.3, front);
  const [farX] = project(view, right, 0, back);
  const [, nearBottom] = project(view, right, 0, front);
  paintFine(layer, [nearX, nearTop, farX, nearBottom], (x, y, out) => {
    const Z = depthOfSide(view, x, right);
    const Y = heightAt(view, y, Z);
    if (Z < front || Z > back) return 0;
    const pixel = (Z * Z) / (view.focal * Math.abs(right) * layer.scale);
    const tall = Z / (view.focal * layer.scale);
    const snow = roof + 0.2 + 0.05 * noise(1.5 * Z, 2);
    if (Y > snow + tall || Y < 0.06) return 0;
    const bounce = 0.2 + 0.12 * smoothStep(2.2, 0.3, Y);
    const sky = daylight.sky * 0.62;
    const along = Z - front - 0.35;
    const bayAt = along / 1.32;
    const bay = Math.floor(bayAt);
    const u = (bayAt - bay - 0.5) * 1.32;
    const door = bay === 1 || bay === 6;
    const window = toBox(u, Y, -0.55, door ? 0.75 : 1.62, 0.55, 2.68, 0.08);
    if (Y < 0.5) {
      const wheel = Math.min(
        length2(along - 2.2, Y - 0.38),
        length2(along - 3.7, Y - 0.38),
        length2(along - 8.2, Y - 0.38),
      );
      lit(out, palette.iron, 0, wheel < 0.36 ? 0.22 : 0.06, wheel < 0.36 ? 0.15 : 0.04);
    } else if (Y > roof + 0.06) lit(out, palette.snow, 0.25, daylight.sky);
    else if (Y > roof - 0.25) paintSheet(out, palette.slate, 0, sky * 1.4, 0.1, 0.03);
    else if (window < -0.03 && along > 0) {
      lit(out, palette.glass, 0.1, 0.7);
      const mirrored = smoothStep(0.45, 0.6, fractalNoise(1.1 * Z, 1.6 * Y, 2));
      for (let k = 0; k < 3; k++)
        out[k] +=
          0.2 * lampLight[k] * (0.5 + 0.7 * noise(2.2 * Z, 2 * Y)) + 0.07 * mirrored * palette.brick.sun[k];
    } else {
      const skirt = Y < 1.42;
      const line = rim(Y - 1.42, 0.03) || rim(Y - 2.84, 0.02);
      const surface = skirt !== line ? palette.paintRed : palette.paintCream;
      paintSheet(out, surface, 0, sky, bounce, 0.03);
      if (window < 0.02 || (door && Math.abs(u) > 0.6 && Math.abs(u) < 0.64)) scale(out, 0.55);
    }
    towards(out, haze, 0.45 * (1 - Math.exp(-Z / 75)));
    return Math.min(edge(Y - snow, tall), edge(Z - back, pixel), edge(front - Z, pixel));
  });
}

/** Bow collector on the roof and the wires above the street. */
function paintWires(layer: Layer): void {
  const pixel = pixelOf(layer);
  const strokes = [
    { from: project(view, middle - 0.4, roof + 0.25, 12), to: project(view, middle, 5.4, 13.2), r: 0.0022 },
    { from: project(view, middle + 0.4, roof + 0.25, 12), to: project(view, middle, 5.4, 13.2), r: 0.0022 },
    { from: project(view, middle - 0.8, 5.4, 13.2), to: project(view, middle + 0.8, 5.4, 13.2), r: 0.002 },
    { from: project(view, middle, 5.45, 4.6), to: project(view, middle, 5.45, 90), r: 0.0011 },
    { from: project(view, -0.35, 5.45, 4.2), to: project(view, -0.35, 5.45, 90), r: 0.0011 },
    { from: project(view, -7.2, 6.2, 15.5), to: project(view, housesAt, 6.6, 15.5), r: 0.0008 },
    { from: project(view, -7.2, 6.2, 31), to: project(view, housesAt, 6.6, 31), r: 0.0006 },
  ];
  for (const { from, to, r } of strokes)
    paint(
      layer,
      [
        Math.min(from[0], to[0]) - 0.01,
        Math.min(from[1], to[1]) - 0.01,
        Math.max(from[0], to[0]) + 0.01,
        Math.max(from[1], to[1]) + 0.01,
      ],
      (x, y, out) => {
        const distance = toStroke(x, y, from, to, Math.max(r, 0.4 * pixel));
        lit(out, palette.iron, 0.4, 0.3);
        return edge(distance, pixel) * mix(0.5, 0.9, Math.min(1, r / pixel));
      },
    );
}

export function paintTram(layer: Layer): void {
  paintSide(layer);
  paintFront(layer);
  paintWires(layer);
}

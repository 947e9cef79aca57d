import type { Triple } from '../../maths/matrix3.js';
import { type Box, fillBox, type Ink } from '../../picture/canvas.js';
import type { Picture } from '../../picture/picture.js';
import { palette } from '../palette.js';
import { drawText, type TextStyle, textWidth } from '../text.js';
import type { LabelFonts } from '../typeface.js';
import { drawLabel } from './labels.js';
import { drawLine, drawRing, fillDot, type Place } from './shapes.js';

/** A place known by name: unexposed film, clear film, something grey. */
export interface NamedPoint {
  readonly name: string;
  /** Densities of red, green, blue. */
  readonly density: Triple;
}

/** Densities of red, green, blue relative to the open gate. */
export interface DensityCloudPicture {
  readonly points: readonly Triple[];
  /** What was grey in the scene, from light to dark. */
  readonly axis: readonly Triple[];
  readonly named: readonly NamedPoint[];
}

/** A way in which a colour can stray from grey: how far, and what it then looks like. */
export interface Stray {
  readonly of: (density: Triple) => number;
  readonly up: string;
  readonly down: string;
}

/** Density is light that is missing: what has less of it in red is redder. */
export const strays = {
  red: { of: ([r, g]) => g - r, up: 'redder', down: 'greener' },
  blue: { of: ([r, g, b]) => (r + g) / 2 - b, up: 'bluer', down: 'yellower' },
} as const satisfies Record<string, Stray>;

/** How dark: the mean of the three. */
const darkness = ([r, g, b]: Triple) => (r + g + b) / 3;

/** Scales shared by the plots that are to be compared. */
export interface CloudScale {
  /** Density at the right end; the left is a little below 0. */
  readonly darkest: number;
  /** Stray at the top; the foot is as far down. */
  readonly widest: number;
}

const lightest = -0.15;

/** No film is darker; noise may pretend to be. */
const darkestOfAll = 4;

/** Scales that hold all named points and all but the last few others. */
export function cloudScale(clouds: readonly DensityCloudPicture[]): CloudScale {
  const strayOf = (density: Triple) =>
    Math.max(...Object.values(strays).map(({ of }) => Math.abs(of(density))));
  const most = (figure: (density: Triple) => number) => {
    const values = clouds.flatMap(({ points }) => points.map(figure)).sort((a, b) => a - b);
    const named = clouds.flatMap((cloud) => cloud.named.map(({ density }) => figure(density)));
    return Math.max(0, values[Math.floor(0.998 * (values.length - 1))] ?? 0, ...named);
  };
  return {
    darkest: Math.min(darkestOfAll, Math.max(2, 0.2 + most(darkness))),
    widest: Math.max(0.4, 1.15 * most(strayOf)),
  };
}

/** A colour that shows which way a density leans, as light as the others: deep shadows would not be seen. */
function leaning(density: Triple): Ink {
  const middle = darkness(density);
  const byte = (d: number) => Math.round(255 * Math.min(1, 0.32 * 10 ** (middle - d)) ** (1 / 2.2));
  return [byte(density[0]), byte(density[1]), byte(density[2])];
}

const dot = { radius: 1.6, strength: 0.55 };
const ring = { radius: 7, thickness: 2 };

/** One plot: how dark from left to right, one stray from the middle line up and down. */
export function cloudPlot(
  canvas: Picture,
  box: Box,
  cloud: DensityCloudPicture,
  stray: Stray,
  scale: CloudScale,
  fonts: LabelFonts,
): void {
  const style: TextStyle = { faces: fonts.regular, sizePx: 15 };
  const placeOf = (density: Triple): Place => ({
    x: box.x + (box.width * (darkness(density) - lightest)) / (scale.darkest - lightest),
    y: box.y + (box.height / 2) * (1 - stray.of(density) / scale.widest),
  });
  const inside = ({ x, y }: Place, edge: number) =>
    x >= box.x + edge && x <= box.x + box.width - edge && y >= box.y + edge && y <= box.y + box.height - edge;
  fillBox(canvas, box, palette.bed);
  for (const point of cloud.points) {
    const at = placeOf(point);
    if (inside(at, dot.radius)) fillDot(canvas, at, dot.radius, leaning(point), dot.strength);
  }
  const middle = Math.round(box.y + box.height / 2);
  fillBox(canvas, { x: box.x, y: middle, width: box.width, height: 1 }, palette.quietText, 0.7);
  drawLine(
    canvas,
    cloud.axis.map(placeOf).filter((at) => inside(at, 1)),
    2,
    palette.comparison,
  );
  const top = { x: box.x + 10, baseline: box.y + 20, ink: palette.quietText };
  drawText(canvas, style, stray.up, top);
  drawText(canvas, style, stray.down, { ...top, baseline: box.y + box.height - 10 });
  const named = cloud.named.map(({ name, density }) => ({ name, ...placeOf(density) }));
  drawNamed(
    canvas,
    box,
    named.filter((at) => inside(at, ring.radius)),
    style,
  );
}

/** Rings, each with its name at it; clear of the words in the plot's corners. */
function drawNamed(
  canvas: Picture,
  box: Box,
  named: readonly (Place & { name: string })[],
  style: TextStyle,
): void {
  const room = { x: box.x + 3, y: box.y + 24, width: box.width - 6, height: box.height - 48 };
  const rings = named.map(({ x, y }) => ({
    x: x - ring.radius,
    y: y - ring.radius,
    width: 2 * ring.radius,
    height: 2 * ring.radius,
  }));
  const taken: Box[] = [...rings];
  for (const at of named) drawRing(canvas, at, ring.radius, ring.thickness, palette.text);
  named.forEach(({ name }, i) => drawLabel(canvas, style, name, rings[i], room, taken));
}

/** Words below plots: where light and dark lie. */
export function cloudFoot(canvas: Picture, box: Box, fonts: LabelFonts): void {
  const style: TextStyle = { faces: fonts.regular, sizePx: 15 };
  const baseline = box.y + 16;
  const right = 'dark parts of the film';
  drawText(canvas, style, 'light parts of the film', { x: box.x, baseline, ink: palette.quietText });
  const x = box.x + box.width - textWidth(style, right);
  drawText(canvas, style, right, { x, baseline, ink: palette.quietText });
}

import { fillBox, makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from './palette.js';
import { drawLine, drawRing, fillDot, type Place } from './reel-report/shapes.js';
import { drawText, type TextStyle, textWidth } from './text.js';
import type { LabelFonts } from './typeface.js';

/** Where a light lies against a camera's white balance. */
export interface WhitePlot {
  /** Positive is too warm, positive is too green. */
  readonly miredShift: number;
  readonly duvShift: number;
  /** Shifts that nobody sees. */
  readonly unseen: { readonly mired: number; readonly duv: number };
}

const size = { width: 740, height: 400 } as const;
const margin = 40;
/** The plot shows so many times what nobody sees, or as far as the light lies. */
const leastReach = 7;

/** Two short lines that make the point of an arrow. */
function drawArrow(canvas: Picture, from: Place, to: Place): void {
  drawLine(canvas, [from, to], 3, palette.comparison);
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  for (const turn of [-0.45, 0.45]) {
    const tip = { x: to.x - 16 * Math.cos(angle + turn), y: to.y - 16 * Math.sin(angle + turn) };
    drawLine(canvas, [tip, to], 3, palette.comparison);
  }
}

/**
 * The camera's white in the middle, the light beside it, and the way the light must go. To the right is warmer, upwards
 * greener; within the box in the middle nobody sees a difference.
 * @returns 8-bit RGB, 740 x 400
 */
export function drawWhitePlot({ miredShift, duvShift, unseen }: WhitePlot, fonts: LabelFonts): Picture {
  const canvas = makeCanvas(size.width, size.height, palette.bed);
  const centre: Place = { x: size.width / 2, y: size.height / 2 };
  const [across, up] = [miredShift / unseen.mired, duvShift / unseen.duv];
  const room = { x: centre.x - 3 * margin, y: centre.y - 1.5 * margin };
  const step = Math.min(
    room.y / leastReach,
    room.x / Math.max(leastReach, Math.abs(across)),
    room.y / Math.max(leastReach, Math.abs(up)),
  );
  fillBox(canvas, { x: 0, y: Math.round(centre.y), width: size.width, height: 1 }, palette.scaleLine);
  fillBox(canvas, { x: Math.round(centre.x), y: 0, width: 1, height: size.height }, palette.scaleLine);
  const half = Math.max(3, step);
  const corner = (x: number, y: number): Place => ({ x: centre.x + x * half, y: centre.y + y * half });
  drawLine(
    canvas,
    [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1), corner(-1, -1)],
    2,
    palette.quietText,
  );
  const light = { x: centre.x + across * step, y: centre.y - up * step };
  const way = Math.hypot(light.x - centre.x, light.y - centre.y);
  const near = (share: number): Place => ({
    x: light.x + share * (centre.x - light.x),
    y: light.y + share * (centre.y - light.y),
  });
  if (way > 2 * half) drawArrow(canvas, near(14 / way), near(1 - (half + 6) / way));
  drawRing(canvas, centre, 4, 2, palette.quietText);
  fillDot(canvas, light, 9, palette.comparison);
  const style: TextStyle = { faces: fonts.regular, sizePx: 18 };
  const words = (text: string, x: number, baseline: number, ink = palette.quietText) =>
    drawText(canvas, style, text, { x: x - textWidth(style, text) / 2, baseline, ink });
  const side = (text: string) => textWidth(style, text) / 2 + 14;
  // The light has its name on its own side of both axes, so theirs stand on the other.
  const [away, level] = [across >= 0 ? -1 : 1, centre.y + (up >= 0 ? 24 : -10)];
  words('cooler (blue)', side('cooler (blue)'), level);
  words('warmer (red)', size.width - side('warmer (red)'), level);
  words('greener', centre.x + away * side('greener'), 26);
  words('pinker', centre.x + away * side('pinker'), size.height - 12);
  const name = 'the light';
  const within = Math.max(Math.abs(across), Math.abs(up)) <= 1;
  const edge = within ? half : Math.abs(light.x - centre.x);
  const beside = centre.x - away * (edge + side(name) + 4);
  const free = Math.min(size.width - side(name), Math.max(side(name), beside));
  words(name, free, light.y + (up >= 0 ? -16 : 28), palette.text);
  return canvas;
}

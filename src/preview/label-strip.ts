import { makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from './palette.js';
import { drawText, fitText, plainLine } from './text.js';
import type { LabelFonts } from './typeface.js';

/** Height of the strip in pixels, and where its text stands. */
export const stripHeight = 38;
const baseline = 23;
const sizePx = 20;

/**
 * The strip above a picture: a quiet word for its part, then its name in a stronger hand, cut with an ellipsis where it
 * is wider than the strip.
 * @returns an 8-bit RGB picture, `width` x `stripHeight`
 */
export function labelStrip(width: number, part: string, name: string, fonts: LabelFonts): Picture {
  const strip = makeCanvas(width, stripHeight, palette.surround);
  const quiet = { faces: fonts.regular, sizePx };
  const strong = { faces: fonts.strong, sizePx };
  const word = fitText(quiet, part, width);
  const end = drawText(strip, quiet, word, { x: 0, baseline, ink: palette.quietText });
  const x = end + (plainLine(part) === '' ? 0 : 10);
  drawText(strip, strong, fitText(strong, name, width - x), { x, baseline, ink: palette.text });
  return strip;
}

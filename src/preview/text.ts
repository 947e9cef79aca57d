import { blendPixel } from '../picture/canvas.js';
import type { Ink } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { fillOutline } from './outline-fill.js';
import type { Typeface, Typefaces } from './typeface.js';

/** How text is set: font parts, pixels per em. */
export interface TextStyle {
  readonly faces: Typefaces;
  readonly sizePx: number;
}

/**
 * Text as it can be set on one line: letters composed (an accent is one character with its letter), control characters
 * and line ends as single spaces. Set left to right, one glyph a character, without kerning.
 */
export function plainLine(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .trim();
}

const faceOf = (faces: Typefaces, character: string): Typeface =>
  faces.find((face) => face.hasChar(character)) ?? faces[0];

function advance({ faces, sizePx }: TextStyle, character: string): number {
  const face = faceOf(faces, character);
  return ((face.charToGlyph(character).advanceWidth ?? 0) * sizePx) / face.unitsPerEm;
}

/** Width of a line in pixels. */
export function textWidth(style: TextStyle, text: string): number {
  return [...text].reduce((sum, character) => sum + advance(style, character), 0);
}

/** A name may be of any length; so much of either end is measured, wider than any picture in the narrowest of letters. */
const measuredAtMost = 2048;

/**
 * The line, cut in its middle with an ellipsis so that it is no wider than `widthPx`: names of files differ at their ends.
 * Empty when not even the ellipsis fits.
 */
export function fitText(style: TextStyle, text: string, widthPx: number): string {
  const line = plainLine(text);
  const long = line.length > 2 * measuredAtMost;
  if (!long && textWidth(style, line) <= widthPx) return line;
  const characters = long ? [...line.slice(0, measuredAtMost), ...line.slice(-measuredAtMost)] : [...line];
  let room = widthPx - advance(style, '…');
  if (room < 0) return '';
  let [head, tail] = [0, characters.length];
  while (head < tail) {
    const fromHead = head <= characters.length - tail;
    room -= advance(style, characters[fromHead ? head : tail - 1]);
    if (room < 0) break;
    if (fromHead) head++;
    else tail--;
  }
  return `${characters.slice(0, head).join('').trimEnd()}…${characters.slice(tail).join('').trimStart()}`;
}

/**
 * Draws a line of text into an 8-bit RGB picture. A character that no font part has is drawn as the font's box.
 * @param x,baseline where the line starts and stands, in pixels
 * @returns the x where the line ends
 */
export function drawText(
  canvas: Picture,
  style: TextStyle,
  text: string,
  at: { readonly x: number; readonly baseline: number; readonly ink: Ink },
): number {
  let { x } = at;
  for (const character of text) {
    const glyph = faceOf(style.faces, character).charToGlyph(character);
    const map = fillOutline(glyph.getPath(x, at.baseline, style.sizePx).commands);
    map.shares.forEach((share, i) => {
      const [column, row] = [map.x + (i % map.width), map.y + Math.floor(i / map.width)];
      if (share > 0) blendPixel(canvas, column, row, at.ink, share);
    });
    x += advance(style, character);
  }
  return x;
}

import type { Ink } from '../../picture/canvas.js';
import type { Picture } from '../../picture/picture.js';
import { drawText, fitText, plainLine, type TextStyle, textWidth } from '../text.js';

/** A text broken into lines no wider than `widthPx`; a word wider than that is cut with an ellipsis. */
export function breakLines(style: TextStyle, text: string, widthPx: number): string[] {
  const lines: string[] = [];
  for (const word of plainLine(text).split(' ')) {
    const last = lines[lines.length - 1];
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(style, joined) <= widthPx) lines[lines.length - 1] = joined;
    else lines.push(fitText(style, word, widthPx));
  }
  return lines;
}

/** From one line's foot to the next, as a multiple of the size. */
const lineStep = 1.35;

/** @returns height in pixels that {@link drawParagraph} needs */
export const paragraphHeight = (style: TextStyle, text: string, widthPx: number): number =>
  Math.ceil(breakLines(style, text, widthPx).length * style.sizePx * lineStep);

/** Sets a text in lines from the top left. @returns the y below it */
export function drawParagraph(
  canvas: Picture,
  style: TextStyle,
  text: string,
  { x, y, width, ink }: { readonly x: number; readonly y: number; readonly width: number; readonly ink: Ink },
): number {
  const step = style.sizePx * lineStep;
  breakLines(style, text, width).forEach((line, i) => {
    drawText(canvas, style, line, { x, baseline: Math.round(y + i * step + style.sizePx), ink });
  });
  return y + paragraphHeight(style, text, width);
}

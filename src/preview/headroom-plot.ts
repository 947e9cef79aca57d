import { fillBox, type Ink, makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from './palette.js';
import { drawText, fitText, type TextStyle, textWidth } from './text.js';
import type { LabelFonts } from './typeface.js';

/** One bar: how far below the end of the scale the brightest parts lie. */
export interface HeadroomBar {
  readonly name: string;
  readonly ink: Ink;
  /** Stops of room; negative: so far over the end; undefined: not known, no bar. */
  readonly stops?: number;
  /** What it says, such as `0.7 stops left`. */
  readonly words: string;
}

const width = 740;
const rowHeight = 44;
const foot = 34;
const nameWidth = 180;
const wordsWidth = 240;
const track = { x: nameWidth + 12, width: width - nameWidth - wordsWidth - 36 };
/** Stops at the ends of the track: the end of the scale lies between. */
const [lowest, highest] = [-5, 1.5];
const along = (stops: number) =>
  ((Math.min(highest, Math.max(lowest, stops)) - lowest) / (highest - lowest)) * track.width;

/**
 * Bars that reach from the dark side to the brightest parts of a still or channel: as far as the line they are within the
 * scale, beyond it they are over.
 * @returns 8-bit RGB, 740 pixels wide
 */
export function drawHeadroom(bars: readonly HeadroomBar[], fonts: LabelFonts): Picture {
  const canvas = makeCanvas(width, bars.length * rowHeight + foot, palette.surround);
  const style: TextStyle = { faces: fonts.regular, sizePx: 18 };
  const end = track.x + Math.round(along(0));
  bars.forEach(({ name, ink, stops, words }, i) => {
    const baseline = i * rowHeight + 27;
    const box = { x: track.x, y: i * rowHeight + 8, width: track.width, height: rowHeight - 16 };
    drawText(canvas, style, fitText(style, name, nameWidth), { x: 0, baseline, ink: palette.text });
    fillBox(canvas, box, palette.bed);
    if (stops !== undefined) {
      const reached = Math.round(along(-stops));
      fillBox(canvas, { ...box, width: Math.max(2, Math.min(reached, end - track.x)) }, ink);
      if (stops < 0)
        fillBox(canvas, { ...box, x: end, width: Math.max(2, track.x + reached - end) }, palette.burntOutBed);
    }
    const x = track.x + track.width + 16;
    drawText(canvas, style, fitText(style, words, width - x), { x, baseline, ink: palette.text });
  });
  const height = bars.length * rowHeight;
  fillBox(canvas, { x: end, y: 0, width: 2, height }, palette.comparison);
  const small: TextStyle = { faces: fonts.regular, sizePx: 16 };
  const words = 'end of the scale: beyond it burns out';
  const x = Math.min(width - textWidth(small, words), end - textWidth(small, words) / 2);
  drawText(canvas, small, words, { x: Math.max(0, x), baseline: height + 22, ink: palette.quietText });
  return canvas;
}

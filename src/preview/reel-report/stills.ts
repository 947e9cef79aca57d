import { type Box, fillBox, placePicture } from '../../picture/canvas.js';
import { changeDepth, expandGrey, type Picture } from '../../picture/picture.js';
import { fitWithin, resample } from '../../picture/resample.js';
import { labelStrip, stripHeight } from '../label-strip.js';
import { palette } from '../palette.js';
import { drawText, fitText, type TextStyle } from '../text.js';
import { drawLabel } from './labels.js';
import { cellWidth, columns, margin, pageWidth, type Pen, spacing } from './page.js';

/** A marked part of a still: its place as shares of the still's sides, 0..1. */
export interface MarkedPart extends Box {
  readonly name: string;
}

/** A still as recorded and as the measured correction shows it: sRGB code values, ready to be looked at. */
export interface ReportStill {
  readonly name: string;
  readonly before: Picture;
  readonly after: Picture;
  /** What is to be said of it, if anything: `disagrees with the others`. */
  readonly remark?: string;
  /** Parts that were marked, outlined in the picture before, and named where it is shown large. */
  readonly marked?: readonly MarkedPart[];
}

const tallestPicture = 555;

function shown(picture: Picture, box: { width: number; height: number }): Picture {
  const { width, height } = fitWithin(picture, box);
  return expandGrey(changeDepth(resample(picture, width, height), 8));
}

/**
 * Outlines of the marked parts on a picture that is shown at `box`: light within dark, seen on any picture.
 * @returns where they stand
 */
function drawMarked(canvas: Picture, box: Box, marked: readonly MarkedPart[] = []): Box[] {
  return marked.map((part) => {
    const [left, top] = [box.x + part.x * box.width, box.y + part.y * box.height].map(Math.round);
    const [width, height] = [part.width * box.width, part.height * box.height].map(Math.round);
    for (const [edge, ink] of [
      [2, palette.bed],
      [1, palette.comparison],
    ] as const) {
      const whole = { x: left - edge, y: top - edge, width: width + 2 * edge, height: height + 2 * edge };
      fillBox(canvas, { ...whole, height: 1 }, ink);
      fillBox(canvas, { ...whole, y: whole.y + whole.height - 1, height: 1 }, ink);
      fillBox(canvas, { ...whole, width: 1 }, ink);
      fillBox(canvas, { ...whole, x: whole.x + whole.width - 1, width: 1 }, ink);
    }
    return { x: left - 2, y: top - 2, width: width + 4, height: height + 4 };
  });
}

/** Outlines with the names of what was marked. */
function drawNamedMarks({ canvas, fonts }: Pen, box: Box, marked: readonly MarkedPart[] = []): void {
  const style: TextStyle = { faces: fonts.regular, sizePx: 15 };
  const outlines = drawMarked(canvas, box, marked);
  const taken = [...outlines];
  marked.forEach(({ name }, i) => drawLabel(canvas, style, name, outlines[i], box, taken));
}

/** The first still, before and after, as large as the page has room. */
export function drawPair(pen: Pen, still: ReportStill, corrected: string, y: number): number {
  const { canvas, fonts } = pen;
  const { name, before, after, remark, marked } = still;
  const box = { width: cellWidth, height: tallestPicture };
  const names = ['before', 'after'] as const;
  const bottoms = [before, after].map((picture, i) => {
    const strip = i === 0 ? [name, remark].filter(Boolean).join(', ') : corrected;
    placePicture(canvas, labelStrip(cellWidth, names[i], strip, fonts), columns[i], y);
    const seen = shown(picture, box);
    const place = { x: columns[i], y: y + stripHeight, width: seen.width, height: seen.height };
    placePicture(canvas, seen, place.x, place.y);
    if (i === 0) drawNamedMarks(pen, place, marked);
    return y + stripHeight + seen.height;
  });
  return Math.max(...bottoms) + spacing;
}

/** Pairs in a row below the first. */
const pairsInRow = 4;
const pairGap = 24;
const pairWidth = (pageWidth - 2 * margin - (pairsInRow - 1) * pairGap) / pairsInRow;
const tallestSmall = 180;
const smallLabel = 52;

/** Height in pixels that so many small pairs may take. */
export const othersHeight = (count: number): number =>
  Math.ceil(count / pairsInRow) * (tallestSmall + smallLabel);

/** The other stills: before and after side by side, small, with their names below. */
export function drawOthers({ canvas, fonts }: Pen, stills: readonly ReportStill[], top: number): number {
  const style: TextStyle = { faces: fonts.regular, sizePx: 16 };
  let [y, rowHeight] = [top, 0];
  stills.forEach(({ name, before, after, remark, marked }, i) => {
    const column = i % pairsInRow;
    if (column === 0 && i > 0) [y, rowHeight] = [y + rowHeight, 0];
    const x = Math.round(margin + column * (pairWidth + pairGap));
    const box = { width: Math.floor(pairWidth / 2) - 1, height: tallestSmall };
    const [left, right] = [shown(before, box), shown(after, box)];
    placePicture(canvas, left, x, y);
    drawMarked(canvas, { x, y, width: left.width, height: left.height }, marked);
    placePicture(canvas, right, x + left.width + 2, y);
    const foot = y + Math.max(left.height, right.height);
    const label = { x, ink: palette.quietText };
    drawText(canvas, style, fitText(style, name, pairWidth), { ...label, baseline: foot + 18 });
    if (remark !== undefined)
      drawText(canvas, style, fitText(style, remark, pairWidth), {
        ...label,
        baseline: foot + 38,
        ink: palette.text,
      });
    rowHeight = Math.max(rowHeight, foot - y + smallLabel);
  });
  return stills.length === 0 ? top : y + rowHeight;
}

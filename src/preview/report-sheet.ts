import { fillBox, makeCanvas, placePicture } from '../picture/canvas.js';
import type { Box, Ink } from '../picture/canvas.js';
import { changeDepth, expandGrey, type Picture } from '../picture/picture.js';
import { fitWithin, resample } from '../picture/resample.js';
import { drawMarks, type Hatching } from './clipping-marks.js';
import { labelStrip, stripHeight } from './label-strip.js';
import { palette } from './palette.js';
import { cellWidth, columns, margin, pageWidth, type Pen, spacing } from './reel-report/page.js';
import { drawParagraph, paragraphHeight } from './reel-report/paragraph.js';
import { drawText, fitText, type TextStyle, textWidth } from './text.js';
import type { LabelFonts } from './typeface.js';

/** What a colour or a hatching on a picture means. */
export interface LegendEntry {
  readonly text: string;
  /** Left out: words alone. */
  readonly bed?: Ink;
  readonly hatching?: Hatching;
  readonly ink?: Ink;
}

/** Marks over a picture: 0 and 255, 8-bit grey, of any size. */
export interface SheetMark {
  readonly mask: Picture;
  readonly hatching: Hatching;
  readonly ink: Ink;
}

export interface SheetPicture {
  /** A quiet word for its part, then its name: `burnt`, `shot-12.png`. */
  readonly part: string;
  readonly name: string;
  /** Ready to be looked at: sRGB code values. */
  readonly display: Picture;
  readonly marks?: readonly SheetMark[];
  /** Set below the picture in as many lines as it takes. */
  readonly legend?: readonly LegendEntry[];
}

/** A page of pictures and words. The words are the caller's. */
export interface Sheet {
  readonly title: string;
  /** The finding, set larger than the rest. */
  readonly headline: string;
  /** Two in a row, row by row. */
  readonly pictures: readonly SheetPicture[];
  /** Whole sentences, below the pictures. */
  readonly sentences: readonly string[];
}

const tallestPicture = 555;
const legendLine = 30;
const swatch = { width: 30, height: 18 };
const swatchGap = 10;
const entryGap = 26;

const styles = (fonts: LabelFonts) => ({
  title: { faces: fonts.strong, sizePx: 30 } satisfies TextStyle,
  headline: { faces: fonts.regular, sizePx: 22 } satisfies TextStyle,
  text: { faces: fonts.regular, sizePx: 18 } satisfies TextStyle,
});

interface PlacedEntry extends LegendEntry {
  readonly x: number;
  readonly line: number;
}

/** What stands before an entry's words. */
const widthBefore = ({ bed }: LegendEntry) => (bed === undefined ? 0 : swatch.width + swatchGap);

/** Entries left to right, on a next line where one would reach over the side. */
function placeLegend(entries: readonly LegendEntry[], style: TextStyle): PlacedEntry[] {
  let [x, line] = [0, 0];
  return entries.map((entry) => {
    const before = widthBefore(entry);
    const text = fitText(style, entry.text, cellWidth - before);
    const width = before + Math.ceil(textWidth(style, text));
    if (x > 0 && x + width > cellWidth) [x, line] = [0, line + 1];
    const placed = { ...entry, text, x, line };
    x += width + entryGap;
    return placed;
  });
}

function drawSwatch(canvas: Picture, box: Box, { bed, hatching, ink }: LegendEntry): void {
  if (bed === undefined) return;
  fillBox(canvas, box, bed);
  if (hatching === undefined || ink === undefined) return;
  for (let y = 0; y < box.height; y++)
    for (let x = 0; x < box.width; x++)
      if (hatching(x, y)) fillBox(canvas, { x: box.x + x, y: box.y + y, width: 1, height: 1 }, ink);
}

/** @returns the y below the legend */
function drawLegend({ canvas, fonts }: Pen, entries: readonly LegendEntry[], x: number, y: number): number {
  const { text } = styles(fonts);
  const placed = placeLegend(entries, text);
  for (const entry of placed) {
    const top = y + 10 + entry.line * legendLine;
    drawSwatch(canvas, { x: x + entry.x, y: top, ...swatch }, entry);
    const start = x + entry.x + widthBefore(entry);
    drawText(canvas, text, entry.text, { x: start, baseline: top + 15, ink: palette.text });
  }
  return placed.length === 0 ? y : y + 10 + (placed[placed.length - 1].line + 1) * legendLine;
}

/** @returns the y below the picture and its legend */
function drawPicture(pen: Pen, { part, name, display, marks, legend }: SheetPicture, x: number, y: number) {
  const { canvas, fonts } = pen;
  placePicture(canvas, labelStrip(cellWidth, part, name, fonts), x, y);
  const size = fitWithin(display, { width: cellWidth, height: tallestPicture });
  const shown = expandGrey(changeDepth(resample(display, size.width, size.height), 8));
  const box = { x, y: y + stripHeight, ...size };
  placePicture(canvas, shown, box.x, box.y);
  for (const { mask, hatching, ink } of marks ?? []) drawMarks(canvas, box, mask, hatching, ink);
  return drawLegend(pen, legend ?? [], x, box.y + box.height);
}

function drawRows(pen: Pen, pictures: readonly SheetPicture[], top: number): number {
  let y = top;
  for (let i = 0; i < pictures.length; i += columns.length) {
    const row = pictures.slice(i, i + columns.length);
    y = Math.max(...row.map((picture, k) => drawPicture(pen, picture, columns[k], y))) + spacing;
  }
  return y;
}

const textColumn = pageWidth - 2 * margin;

function draw(pen: Pen, { title, headline, pictures, sentences }: Sheet): number {
  const { canvas, fonts } = pen;
  const style = styles(fonts);
  const heading = fitText(style.title, title, textColumn);
  drawText(canvas, style.title, heading, { x: margin, baseline: margin + 28, ink: palette.text });
  const at = { x: margin, width: textColumn, ink: palette.text };
  let y = drawParagraph(canvas, style.headline, headline, { ...at, y: margin + 44 }) + spacing;
  y = drawRows(pen, pictures, y);
  for (const sentence of sentences) y = drawParagraph(canvas, style.text, sentence, { ...at, y }) + 6;
  return y + margin / 2;
}

/** More than any sheet needs of this many pictures and words. */
function roomFor({ headline, pictures, sentences }: Sheet, fonts: LabelFonts): number {
  const style = styles(fonts);
  const rows = Math.ceil(pictures.length / columns.length);
  const entries = pictures.reduce((sum, { legend }) => sum + (legend?.length ?? 0), 0);
  const words = sentences.reduce((sum, text) => sum + paragraphHeight(style.text, text, textColumn) + 6, 0);
  const row = stripHeight + tallestPicture + 10 + spacing;
  const head = paragraphHeight(style.headline, headline, textColumn);
  return 4 * margin + head + words + rows * row + entries * legendLine;
}

/**
 * A finding as one picture of 1600 pixels width: title, headline, pictures with their names above and the meaning of their
 * marks below, sentences. Any aspect ratio of the pictures, from 1 x 1 pixel on.
 * @returns 8-bit RGB, sRGB
 */
export function drawReportSheet(sheet: Sheet, fonts: LabelFonts): Picture {
  const canvas = makeCanvas(pageWidth, roomFor(sheet, fonts), palette.surround);
  const height = Math.min(canvas.height, Math.ceil(draw({ canvas, fonts }, sheet)));
  return { ...canvas, height, data: canvas.data.slice(0, 3 * pageWidth * height) };
}

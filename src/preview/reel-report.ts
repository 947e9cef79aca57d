import { makeCanvas, placePicture } from '../picture/canvas.js';
import { changeDepth, expandGrey, type Picture } from '../picture/picture.js';
import { fitWithin, resample } from '../picture/resample.js';
import { labelStrip, stripHeight } from './label-strip.js';
import { palette } from './palette.js';
import {
  cloudFoot,
  cloudPlot,
  cloudScale,
  type DensityCloudPicture,
  strays,
} from './reel-report/cloud-plot.js';
import { barHeight, type LossBar, lossBar } from './reel-report/loss-bars.js';
import { drawParagraph, paragraphHeight } from './reel-report/paragraph.js';
import { drawText, fitText, type TextStyle } from './text.js';
import type { LabelFonts } from './typeface.js';

export type { DensityCloudPicture, NamedPoint } from './reel-report/cloud-plot.js';
export type { LossBar } from './reel-report/loss-bars.js';

/** A still as recorded and as the measured correction shows it: sRGB code values, ready to be looked at. */
export interface ReportStill {
  readonly name: string;
  readonly before: Picture;
  readonly after: Picture;
  /** What is to be said of it, if anything: `disagrees with the others`. */
  readonly remark?: string;
}

/** All that the report shows. The words are the caller's. */
export interface ReelReport {
  /** What was measured: the reel's name. */
  readonly title: string;
  /** The finding in one line. */
  readonly headline: string;
  /** The first is shown large. Not empty. */
  readonly stills: readonly ReportStill[];
  readonly before: DensityCloudPicture;
  readonly after: DensityCloudPicture;
  readonly bars: readonly LossBar[];
  /** How sure, in a few words. */
  readonly sureness: string;
  /** Whole sentences. */
  readonly sentences: readonly string[];
}

/** Where everything stands, pixels. */
const pageWidth = 1600;
const margin = 40;
const gap = 40;
const cellWidth = (pageWidth - 2 * margin - gap) / 2;
const tallestPicture = 555;
const plotHeight = 200;
const plotFoot = 26;
const spacing = 22;
const columns = [margin, margin + cellWidth + gap] as const;

interface Pen {
  readonly canvas: Picture;
  readonly fonts: LabelFonts;
}

const styles = {
  title: (fonts: LabelFonts): TextStyle => ({ faces: fonts.strong, sizePx: 30 }),
  headline: (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 22 }),
  heading: (fonts: LabelFonts): TextStyle => ({ faces: fonts.strong, sizePx: 20 }),
  text: (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 18 }),
};

function shown(picture: Picture, box: { width: number; height: number }): Picture {
  const { width, height } = fitWithin(picture, box);
  return expandGrey(changeDepth(resample(picture, width, height), 8));
}

function drawTitle({ canvas, fonts }: Pen, { title, headline }: ReelReport): number {
  const width = pageWidth - 2 * margin;
  drawText(canvas, styles.title(fonts), fitText(styles.title(fonts), title, width), {
    x: margin,
    baseline: margin + 28,
    ink: palette.text,
  });
  const at = { x: margin, y: margin + 44, width, ink: palette.text };
  return drawParagraph(canvas, styles.headline(fonts), headline, at) + spacing;
}

/** The first still, before and after, as large as the page has room. */
function drawPair({ canvas, fonts }: Pen, { name, before, after, remark }: ReportStill, y: number): number {
  const box = { width: cellWidth, height: tallestPicture };
  const names = ['before', 'after'] as const;
  const bottoms = [before, after].map((picture, i) => {
    const strip = i === 0 ? [name, remark].filter(Boolean).join(', ') : 'as this measurement corrects it';
    placePicture(canvas, labelStrip(cellWidth, names[i], strip, fonts), columns[i], y);
    const seen = shown(picture, box);
    placePicture(canvas, seen, columns[i], y + stripHeight);
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

/** The other stills: before and after side by side, small, with their names below. */
function drawOthers({ canvas, fonts }: Pen, stills: readonly ReportStill[], top: number): number {
  const style: TextStyle = { faces: fonts.regular, sizePx: 16 };
  let [y, rowHeight] = [top, 0];
  stills.forEach(({ name, before, after, remark }, i) => {
    const column = i % pairsInRow;
    if (column === 0 && i > 0) [y, rowHeight] = [y + rowHeight, 0];
    const x = Math.round(margin + column * (pairWidth + pairGap));
    const box = { width: Math.floor(pairWidth / 2) - 1, height: tallestSmall };
    const [left, right] = [shown(before, box), shown(after, box)];
    placePicture(canvas, left, x, y);
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

const cloudCaption =
  'Every dot is a colour of the stills. Grey lies on the thin line in the middle, coloured things above and below it. ' +
  'The white line is where this reel shows what was grey: sound film has it on the thin line, faded film beside it.';

/** The density clouds, each below its picture: two plots, for red against green and for blue against yellow. */
function drawClouds({ canvas, fonts }: Pen, { before, after }: ReelReport, top: number): number {
  const style = styles.heading(fonts);
  const scale = cloudScale([before, after]);
  [before, after].forEach((cloud, i) => {
    const words = i === 0 ? 'Colours of the film, before' : 'and after';
    drawText(canvas, style, words, { x: columns[i], baseline: top + 20, ink: palette.text });
    Object.values(strays).forEach((stray, row) => {
      const y = top + 32 + row * (plotHeight + 6);
      cloudPlot(
        canvas,
        { x: columns[i], y, width: cellWidth, height: plotHeight },
        cloud,
        stray,
        scale,
        fonts,
      );
    });
  });
  const foot = top + 32 + 2 * (plotHeight + 6);
  for (const x of columns) cloudFoot(canvas, { x, y: foot, width: cellWidth, height: plotFoot }, fonts);
  const y = foot + plotFoot;
  const at = { x: margin, y, width: pageWidth - 2 * margin, ink: palette.quietText };
  return drawParagraph(canvas, { faces: fonts.regular, sizePx: 16 }, cloudCaption, at) + spacing;
}

/** Bars at the left, words at the right. */
function drawFindings(
  { canvas, fonts }: Pen,
  { bars, sureness, sentences }: ReelReport,
  top: number,
): number {
  const heading = styles.heading(fonts);
  drawText(canvas, heading, 'What time took, and left behind', {
    x: columns[0],
    baseline: top + 20,
    ink: palette.text,
  });
  bars.forEach((bar, i) => lossBar(canvas, columns[0], top + 34 + i * barHeight, bar, fonts));
  drawText(canvas, heading, fitText(heading, sureness, cellWidth), {
    x: columns[1],
    baseline: top + 20,
    ink: palette.text,
  });
  let y = top + 38;
  for (const sentence of sentences)
    y =
      drawParagraph(canvas, styles.text(fonts), sentence, {
        x: columns[1],
        y,
        width: cellWidth,
        ink: palette.text,
      }) + 6;
  return Math.max(y, top + 34 + bars.length * barHeight) + margin / 2;
}

function draw(pen: Pen, report: ReelReport): number {
  const [first, ...others] = report.stills;
  const pictures = drawPair(pen, first, drawTitle(pen, report));
  return drawFindings(pen, report, drawClouds(pen, report, drawOthers(pen, others, pictures)));
}

/** More than any report needs above what its words and small pictures take. */
const baseHeight = 1500;

function roomFor({ stills, sentences, headline }: ReelReport, fonts: LabelFonts): number {
  const rows = Math.ceil(Math.max(0, stills.length - 1) / pairsInRow);
  const words = [headline, ...sentences].reduce(
    (sum, text) => sum + paragraphHeight(styles.headline(fonts), text, cellWidth) + 6,
    0,
  );
  return baseHeight + rows * (tallestSmall + smallLabel) + words;
}

/**
 * The report of a measured reel as one picture of 1600 pixels width: before and after, the colours of the film along the
 * axis of its greys before and after, what was found as bars with how far it may be off, and what it means in words.
 * @returns 8-bit RGB, sRGB
 */
export function drawReelReport(report: ReelReport, fonts: LabelFonts): Picture {
  const canvas = makeCanvas(pageWidth, roomFor(report, fonts), palette.surround);
  const height = Math.min(canvas.height, Math.ceil(draw({ canvas, fonts }, report)));
  return { ...canvas, height, data: canvas.data.slice(0, 3 * pageWidth * height) };
}

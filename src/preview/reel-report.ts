import { makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from './palette.js';
import {
  cloudFoot,
  cloudPlot,
  cloudScale,
  type DensityCloudPicture,
  strays,
} from './reel-report/cloud-plot.js';
import { barHeight, type LossBar, lossBar } from './reel-report/loss-bars.js';
import { cellWidth, columns, margin, pageWidth, type Pen, spacing } from './reel-report/page.js';
import { drawParagraph, paragraphHeight } from './reel-report/paragraph.js';
import { drawOthers, drawPair, othersHeight, type ReportStill } from './reel-report/stills.js';
import { drawText, fitText, type TextStyle } from './text.js';
import type { LabelFonts } from './typeface.js';

export type { DensityCloudPicture, NamedPoint } from './reel-report/cloud-plot.js';
export type { LossBar } from './reel-report/loss-bars.js';
export type { MarkedPart, ReportStill } from './reel-report/stills.js';

/** All that the report shows. The words are the caller's. */
export interface ReelReport {
  /** What was measured: the reel's name. */
  readonly title: string;
  /** The finding in one line. */
  readonly headline: string;
  /** What was done to the pictures after, in a few words. */
  readonly corrected: string;
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

const styles = {
  title: (fonts: LabelFonts): TextStyle => ({ faces: fonts.strong, sizePx: 30 }),
  headline: (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 22 }),
  heading: (fonts: LabelFonts): TextStyle => ({ faces: fonts.strong, sizePx: 20 }),
  text: (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 18 }),
};

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

const plotHeight = 200;
const plotFoot = 26;

const cloudCaption =
  'Every dot is a colour of the stills. Grey lies on the thin line in the middle, coloured things above and below it. ' +
  'The white line is where this reel is taken to show what was grey: sound film has it on the thin line, faded film beside it.';

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
  const pictures = drawPair(pen, first, report.corrected, drawTitle(pen, report));
  return drawFindings(pen, report, drawClouds(pen, report, drawOthers(pen, others, pictures)));
}

/** More than any report needs above what its words and small pictures take. */
const baseHeight = 1500;

function roomFor({ stills, sentences, headline }: ReelReport, fonts: LabelFonts): number {
  const words = [headline, ...sentences].reduce(
    (sum, text) => sum + paragraphHeight(styles.headline(fonts), text, cellWidth) + 6,
    0,
  );
  return baseHeight + othersHeight(stills.length - 1) + words;
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

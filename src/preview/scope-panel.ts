import { fillBox, placePicture } from '../picture/canvas.js';
import type { Box, Ink } from '../picture/canvas.js';
import { drawHistogram } from '../picture/histogram.js';
import type { Picture } from '../picture/picture.js';
import { drawWaveform } from '../picture/waveform.js';
import { palette } from './palette.js';
import { drawText, textWidth } from './text.js';
import type { TextStyle } from './text.js';
import type { LabelFonts } from './typeface.js';

/** Steps of the scales, per cent of the code range. */
const steps = [0, 25, 50, 75, 100];

/** Room for the scale at the left of a waveform, pixels. */
export const scaleWidth = 58;

/** Room for a heading above and, under a histogram, for the scale. */
export const headingHeight = 30;
export const footHeight = 28;

const scaleStyle = (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 16 });

const traces = {
  bed: palette.bed,
  gutter: palette.surround,
  inks: [palette.red, palette.green, palette.blue] as [Ink, Ink, Ink],
  greyInk: palette.grey,
};

function heading(canvas: Picture, x: number, top: number, text: string, fonts: LabelFonts): void {
  drawText(canvas, scaleStyle(fonts), text, { x, baseline: top + 18, ink: palette.quietText });
}

/**
 * A waveform with its heading above and its scale in per cent at the left, in the given box. The lines of 0 and 100 % lie
 * just outside of the plot, so that what is burnt out or blocked stays in sight.
 */
export function waveformPanel(canvas: Picture, box: Box, picture: Picture, fonts: LabelFonts): void {
  const plot = {
    x: box.x + scaleWidth,
    y: box.y + headingHeight,
    width: box.width - scaleWidth,
    height: box.height - headingHeight - 1,
  };
  heading(canvas, plot.x, box.y, 'Waveform: red, green, blue', fonts);
  placePicture(
    canvas,
    drawWaveform(picture, { ...traces, width: plot.width, height: plot.height }),
    plot.x,
    plot.y,
  );
  const style = scaleStyle(fonts);
  for (const step of steps) {
    const y = plot.y + Math.round(((100 - step) / 100) * (plot.height + 1)) - 1;
    fillBox(canvas, { x: plot.x, y, width: plot.width, height: 1 }, palette.scaleLine, 0.6);
    const text = step === 100 ? '100 %' : `${step}`;
    const x = plot.x - 10 - textWidth(style, step === 100 ? text : `${text} %`);
    drawText(canvas, style, text, { x, baseline: y + 5, ink: palette.quietText });
  }
}

/** A histogram with its heading above and its scale below, in the given box; with `before` as a line over it. */
export function histogramPanel(
  canvas: Picture,
  box: Box,
  picture: Picture,
  fonts: LabelFonts,
  before?: Picture,
): void {
  const plot = {
    x: box.x + scaleWidth,
    y: box.y + headingHeight,
    width: box.width - scaleWidth,
    height: box.height - headingHeight - footHeight,
  };
  const words = `Histogram${before === undefined ? '' : '; the line is the picture before'}`;
  heading(canvas, plot.x, box.y, words, fonts);
  const style = { ...traces, width: plot.width, height: plot.height, lineInk: palette.comparison };
  placePicture(canvas, drawHistogram(picture, style, before), plot.x, plot.y);
  const text = scaleStyle(fonts);
  for (const step of steps) {
    const x = plot.x + Math.round((step / 100) * (plot.width - 1));
    fillBox(canvas, { x, y: plot.y + plot.height, width: 1, height: 5 }, palette.scaleLine);
    const label = step === 100 ? '100 %' : `${step}`;
    const left = step === 0 ? x : x - textWidth(text, label) / (step === 100 ? 1 : 2);
    drawText(canvas, text, label, { x: left, baseline: plot.y + plot.height + 22, ink: palette.quietText });
  }
}

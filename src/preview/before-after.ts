// Before and after as one picture: pictures in, one picture out. Knows pictures and how they are set side by side;
// not where they come from, what changed them, or how fonts and files are read.

import { fillBox, makeCanvas, placePicture } from '../picture/canvas.js';
import type { Box, Ink } from '../picture/canvas.js';
import { changeDepth, expandGrey } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';
import { fitWithin, resample } from '../picture/resample.js';
import { drawMarks, findClipping, hatchings, marksInWords } from './clipping-marks.js';
import type { ClippingMarks, ClippingShares, CodeLimits, Hatching } from './clipping-marks.js';
import { labelStrip, stripHeight } from './label-strip.js';
import { palette } from './palette.js';
import { footHeight, headingHeight, histogramPanel, waveformPanel } from './scope-panel.js';
import { drawText } from './text.js';
import type { LabelFonts } from './typeface.js';

/** One side of the comparison. */
export interface Side {
  /** What the caller calls it: the still's name, or the look's. Cut with an ellipsis where too long. */
  readonly name: string;
  /** Ready to be looked at: sRGB code values. Shown over the surround where transparent. */
  readonly display: Picture;
  /** Code values as the device holds them, for marks and scopes; `display` when left out. Any depth. */
  readonly codes?: Picture;
  /** Codes of white and black for the marks; by default the ends of the full range of `codes`. */
  readonly limits?: CodeLimits;
}

export interface BeforeAfter {
  /** 8-bit RGB, sRGB. */
  readonly picture: Picture;
  readonly shares: ClippingShares;
  /** The caption in words: `0.3 % newly burnt out, none newly blocked`. */
  readonly caption: string;
}

/** Where everything stands, pixels. */
const pageWidth = 1600;
const margin = 40;
const cellWidth = (pageWidth - 3 * margin) / 2;
const tallestPicture = 620;
const captionHeight = 44;
const waveformHeight = headingHeight + 224;
const histogramHeight = headingHeight + 180 + footHeight;
const spacing = 18;

/** A column of the page from the top: strip, picture, caption, scopes. */
function boxesOf(x: number, pictureHeight: number) {
  const top = margin + stripHeight;
  const caption = top + pictureHeight;
  const waveform = caption + captionHeight + spacing;
  const histogram = waveform + waveformHeight + spacing;
  return {
    picture: { x, y: top, width: cellWidth, height: pictureHeight },
    caption: { x, y: caption, width: cellWidth, height: captionHeight },
    waveform: { x, y: waveform, width: cellWidth, height: waveformHeight },
    histogram: { x, y: histogram, width: cellWidth, height: histogramHeight },
    bottom: histogram + histogramHeight + margin - spacing,
  };
}

/** Shows a picture in the top left corner of a box, flush with its name, and says where it stands. */
function showPicture(canvas: Picture, { x, y, ...room }: Box, source: Picture): Box {
  const size = fitWithin(source, room);
  placePicture(canvas, expandGrey(changeDepth(resample(source, size.width, size.height), 8)), x, y);
  return { x, y, ...size };
}

/** The caption under the picture after: each kind of mark as a small swatch, with its share in words. */
function drawCaption(canvas: Picture, box: Box, shares: ClippingShares, fonts: LabelFonts): void {
  const style = { faces: fonts.regular, sizePx: 18 };
  const [burntOut, blocked] = marksInWords(shares);
  const swatch = (x: number, bed: Ink, hatching: Hatching, ink: Ink) => {
    const [width, height, y] = [30, 18, box.y + 15];
    fillBox(canvas, { x, y, width, height }, bed);
    for (let row = 0; row < height; row++)
      for (let column = 0; column < width; column++)
        if (hatching(column, row)) fillBox(canvas, { x: x + column, y: y + row, width: 1, height: 1 }, ink);
    return x + width + 10;
  };
  const write = (x: number, text: string) =>
    drawText(canvas, style, text, { x, baseline: box.y + 30, ink: palette.text });
  let x = swatch(box.x, palette.burntOutBed, hatchings.burntOut, palette.burntOut);
  x = Math.ceil(write(x, burntOut)) + 28;
  x = swatch(x, palette.blockedBed, hatchings.blocked, palette.blocked);
  write(x, blocked);
}

function drawClipping(canvas: Picture, shown: Box, marks: ClippingMarks): void {
  drawMarks(canvas, shown, marks.burntOut, hatchings.burntOut, palette.burntOut);
  drawMarks(canvas, shown, marks.blocked, hatchings.blocked, palette.blocked);
}

/**
 * Before and after as one picture of 1600 pixels width: both pictures with their names above, marks on the one after where
 * highlights burn out or shadows block that were not so before, what the marks say in words, waveform and histogram of both.
 * Any aspect ratio, from 1 x 1 pixel on.
 * @param before,after both `codes` of one size; `display` may be of another (a smaller one is faster)
 */
export function drawBeforeAfter(before: Side, after: Side, fonts: LabelFonts): BeforeAfter {
  const codes = { before: before.codes ?? before.display, after: after.codes ?? after.display };
  const marks = findClipping(codes.before, codes.after, { before: before.limits, after: after.limits });
  const cell = { width: cellWidth, height: tallestPicture };
  const pictureHeight = Math.max(
    fitWithin(before.display, cell).height,
    fitWithin(after.display, cell).height,
  );
  const left = boxesOf(margin, pictureHeight);
  const right = boxesOf(2 * margin + cellWidth, pictureHeight);
  const canvas = makeCanvas(pageWidth, left.bottom, palette.surround);

  placePicture(canvas, labelStrip(cellWidth, 'before', before.name, fonts), left.picture.x, margin);
  placePicture(canvas, labelStrip(cellWidth, 'after', after.name, fonts), right.picture.x, margin);
  showPicture(canvas, left.picture, before.display);
  drawClipping(canvas, showPicture(canvas, right.picture, after.display), marks);
  drawCaption(canvas, right.caption, marks.shares, fonts);

  const scopes = { before: expandGrey(codes.before), after: expandGrey(codes.after) };
  waveformPanel(canvas, left.waveform, scopes.before, fonts);
  waveformPanel(canvas, right.waveform, scopes.after, fonts);
  histogramPanel(canvas, left.histogram, scopes.before, fonts);
  histogramPanel(canvas, right.histogram, scopes.after, fonts, scopes.before);
  return { picture: canvas, shares: marks.shares, caption: marksInWords(marks.shares).join(', ') };
}

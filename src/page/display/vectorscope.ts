import { rgbToXyz } from '../../colour/primaries/rgb-matrix.js';
import { primaries } from '../../colour/primaries/index.js';
import { blendPixel, fillBox, type Ink, makeCanvas } from '../../picture/canvas.js';
import { expandGrey, lastCode, type Picture } from '../../picture/picture.js';

export interface VectorscopeStyle {
  readonly width: number;
  readonly height: number;
  readonly bed: Ink;
  readonly gutter: Ink;
  readonly greyInk: Ink;
  /** The lines of the two axes and the ring. */
  readonly lineInk: Ink;
}

/** Weights of BT.709's luma, from its primaries. */
const [, , , redWeight, greenWeight, blueWeight] = rgbToXyz(primaries.bt709);

/** Colour differences Cb and Cr of code values 0..1, each -0.5..0.5 (ITU-R BT.709). */
export function colourDifferences(red: number, green: number, blue: number): [cb: number, cr: number] {
  const luma = redWeight * red + greenWeight * green + blueWeight * blue;
  return [(blue - luma) / (2 * (1 - blueWeight)), (red - luma) / (2 * (1 - redWeight))];
}

/** A place this many times fuller than one in which all pixels spread evenly over the disc is half lit. */
const halfLitAt = 0.6;

/**
 * The vectorscope: how often each pair of colour differences occurs, grey in the middle, Cb to the right, Cr upwards.
 * The ring lies where half of the greatest difference is reached. RGB, 8 bit, of the size asked for.
 */
export function drawVectorscope(picture: Picture, style: VectorscopeStyle): Picture {
  const { width, height } = style;
  const side = Math.min(width, height);
  const [left, top] = [Math.floor((width - side) / 2), Math.floor((height - side) / 2)];
  const plot = makeCanvas(width, height, style.bed);
  drawScale(plot, left, top, side, style.lineInk);
  const counts = countDifferences(picture, side);
  const even = (picture.width * picture.height) / side ** 2;
  counts.forEach((count, i) => {
    if (count === 0) return;
    const density = count / even;
    blendPixel(
      plot,
      left + (i % side),
      top + Math.floor(i / side),
      style.greyInk,
      density / (density + halfLitAt),
    );
  });
  return plot;
}

function drawScale(plot: Picture, left: number, top: number, side: number, ink: Ink): void {
  const middle = side >> 1;
  fillBox(plot, { x: left + middle, y: top, width: 1, height: side }, ink, 0.7);
  fillBox(plot, { x: left, y: top + middle, width: side, height: 1 }, ink, 0.7);
  const steps = 8 * side;
  for (let i = 0; i < steps; i++) {
    const angle = (2 * Math.PI * i) / steps;
    const x = left + Math.round(middle + (side / 4) * Math.cos(angle));
    const y = top + Math.round(middle + (side / 4) * Math.sin(angle));
    blendPixel(plot, x, y, ink, 0.35);
  }
}

function countDifferences(picture: Picture, side: number): Float64Array {
  const { data, channels, bits } = expandGrey(picture);
  const last = lastCode(bits);
  const counts = new Float64Array(side * side);
  const cell = (difference: number) =>
    Math.min(side - 1, Math.max(0, Math.round((difference + 0.5) * (side - 1))));
  for (let i = 0; i < data.length; i += channels) {
    if (channels === 4 && data[i + 3] === 0) continue;
    const [cb, cr] = colourDifferences(data[i] / last, data[i + 1] / last, data[i + 2] / last);
    counts[(side - 1 - cell(cr)) * side + cell(cb)]++;
  }
  return counts;
}

import { fillBox, blendPixel, makeCanvas } from './canvas.js';
import type { Ink } from './canvas.js';
import { countLevels, levelsOf } from './level-counts.js';
import { colourChannels } from './picture.js';
import type { Picture } from './picture.js';
import { areaCoverage } from './resample.js';

export interface WaveformStyle {
  /** Size of the plot in pixels. */
  readonly width: number;
  readonly height: number;
  /** What lies behind the trace, and between the bands. */
  readonly bed: Ink;
  readonly gutter: Ink;
  /** Colours of the red, green and blue trace; a grey picture is drawn with `greyInk`. */
  readonly inks: readonly [Ink, Ink, Ink];
  readonly greyInk: Ink;
}

/** Pixels between two bands; none where there is no room for them. */
const gapAt = (width: number): number => (width >= 96 ? 8 : 0);

/**
 * A trace this many times thinner than one in which the codes of a column spread evenly is still half lit:
 * chosen by eye, so that a smooth sky and fine grain both show.
 */
const halfLitAt = 2;

/** A band's place: where it starts and how many columns it has. */
function bandsOf(count: number, width: number): { x: number; columns: number }[] {
  const gap = gapAt(width);
  const room = width - gap * (count - 1);
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [Math.round((i * room) / count), Math.round(((i + 1) * room) / count)];
    return { x: from + i * gap, columns: to - from };
  });
}

/** The picture's columns that fall into one column of a band; one of them at least. */
function columnsAt(column: number, columns: number, width: number): [from: number, to: number] {
  const from = Math.floor((column * width) / columns);
  return [from, Math.max(from + 1, Math.floor(((column + 1) * width) / columns))];
}

/**
 * The waveform: for each column of the picture how often each code value occurs, the last code at the top. Red, green
 * and blue stand beside each other as bands, each showing the whole width of the picture. A grey picture has one band.
 * The plot has no scale: 0 % is its lowest row, 100 % of the code range its highest.
 * @returns an 8-bit RGB picture of the size asked for
 */
export function drawWaveform(picture: Picture, style: WaveformStyle): Picture {
  const { width, height } = style;
  const plot = makeCanvas(width, height, style.gutter);
  const count = colourChannels(picture);
  const inks = count === 1 ? [style.greyInk] : style.inks;
  const rows = areaCoverage(levelsOf(picture), height);
  bandsOf(count, width).forEach(({ x, columns }, channel) => {
    fillBox(plot, { x, y: 0, width: columns, height }, style.bed);
    for (let column = 0; column < columns; column++) {
      const { counts, pixels } = countLevels(picture, channel, ...columnsAt(column, columns, picture.width));
      if (pixels > 0) drawColumn(plot, x + column, inks[channel], rows, counts, pixels);
    }
  });
  return plot;
}

/** One column of a trace: brightness by how densely the codes lie, saturating where they crowd. */
function drawColumn(
  plot: Picture,
  x: number,
  ink: Ink,
  rows: ReturnType<typeof areaCoverage>,
  counts: Float64Array,
  pixels: number,
): void {
  for (let row = 0; row < plot.height; row++) {
    const shares = rows.shares[row];
    let average = 0;
    for (let k = 0; k < shares.length; k++) average += shares[k] * counts[rows.first[row] + k];
    // 1 where the column's codes are spread evenly over all levels.
    const density = (average * counts.length) / pixels;
    if (density > 0) blendPixel(plot, x, plot.height - 1 - row, ink, density / (density + halfLitAt));
  }
}

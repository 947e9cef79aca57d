import { percentile } from '../maths/percentile.js';
import { blendPixel, fillBox, makeCanvas } from './canvas.js';
import type { Box, Ink } from './canvas.js';
import { countLevels, levelsOf } from './level-counts.js';
import { colourChannels } from './picture.js';
import type { Picture } from './picture.js';
import { areaCoverage } from './resample.js';

export interface HistogramStyle {
  /** Size of the plot in pixels. */
  readonly width: number;
  readonly height: number;
  readonly bed: Ink;
  readonly gutter: Ink;
  /** Colours of red, green and blue; a grey picture is drawn with `greyInk`. */
  readonly inks: readonly [Ink, Ink, Ink];
  readonly greyInk: Ink;
  /** The line of the picture compared with. */
  readonly lineInk: Ink;
}

/** Pixels between two rows; none where there is no room for them. */
const gapAt = (height: number): number => (height >= 48 ? 4 : 0);

/** Share of the pixels per level, as an average over the levels under each column; levels x share sums to 1. */
function densities(picture: Picture, channel: number, width: number): Float64Array {
  const { counts, pixels } = countLevels(picture, channel);
  const { first, shares } = areaCoverage(levelsOf(picture), width);
  return Float64Array.from(first, (start, column) =>
    shares[column].reduce((sum, share, k) => sum + (share * counts[start + k]) / Math.max(1, pixels), 0),
  );
}

/**
 * The density that fills a row: one that few of the levels in use exceed. The two ends do not count, where burnt or
 * blocked pixels pile up and would press the rest flat, unless nothing lies between them.
 */
function fullHeight(all: readonly Float64Array[]): number {
  const used = (values: readonly number[]) => Float64Array.from(values.filter((density) => density > 0));
  const inner = used(all.flatMap((densities) => [...densities.subarray(1, -1)]));
  return percentile(inner.length > 0 ? inner : used(all.flatMap((densities) => [...densities])), 0.995);
}

function rowsOf(count: number, height: number): Pick<Box, 'y' | 'height'>[] {
  const gap = gapAt(height);
  const room = height - gap * (count - 1);
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [Math.round((i * room) / count), Math.round(((i + 1) * room) / count)];
    return { y: from + i * gap, height: to - from };
  });
}

/** Heights in pixels, by the square root of the density: a level held by few pixels is seen beside one held by many. */
function heightsIn(row: Pick<Box, 'height'>, density: Float64Array, full: number): number[] {
  return Array.from(density, (d) => (full > 0 ? Math.min(1, Math.sqrt(d / full)) * row.height : 0));
}

/**
 * The histogram: one row a channel, red, green, blue from the top, code 0 at the left and the last code at the right.
 * Heights go with the square root of the count; all rows have one scale. With `before`, that picture's histogram
 * is laid over it as a line, on the same scale.
 * @param before a picture with as many colour channels, any size and depth
 * @returns an 8-bit RGB picture of the size asked for
 */
export function drawHistogram(picture: Picture, style: HistogramStyle, before?: Picture): Picture {
  const { width, height } = style;
  const count = colourChannels(picture);
  const channels = [...Array(count).keys()];
  const inks = count === 1 ? [style.greyInk] : style.inks;
  const fills = channels.map((channel) => densities(picture, channel, width));
  const lines = before === undefined ? [] : channels.map((channel) => densities(before, channel, width));
  const full = fullHeight([...fills, ...lines]);
  const plot = makeCanvas(width, height, style.gutter);
  rowsOf(count, height).forEach((row, channel) => {
    fillBox(plot, { x: 0, width, ...row }, style.bed);
    fillUnder(plot, row, heightsIn(row, fills[channel], full), inks[channel]);
    if (before !== undefined) traceLine(plot, row, heightsIn(row, lines[channel], full), style.lineInk);
  });
  return plot;
}

/** Fills from the foot of the row up, its last pixel by the share that is covered. */
function fillUnder(
  plot: Picture,
  row: Pick<Box, 'y' | 'height'>,
  heights: readonly number[],
  ink: Ink,
): void {
  const foot = row.y + row.height - 1;
  heights.forEach((height, x) => {
    for (let up = 0; up < height; up++) blendPixel(plot, x, foot - up, ink, Math.min(1, height - up));
  });
}

/** A line one pixel thick along the tops, joined between neighbouring columns; not along the foot, where nothing is. */
function traceLine(
  plot: Picture,
  row: Pick<Box, 'y' | 'height'>,
  heights: readonly number[],
  ink: Ink,
): void {
  const foot = row.y + row.height - 1;
  const level = heights.map((height) => Math.max(0, Math.ceil(height) - 1));
  heights.forEach((height, x) => {
    const last = level[Math.max(0, x - 1)];
    const [low, high] = [Math.min(last, level[x]), Math.max(last, level[x])];
    if (height === 0 && last === 0) return;
    for (let up = low; up <= high; up++) blendPixel(plot, x, foot - up, ink, 1);
  });
}

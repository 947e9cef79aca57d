// Which frames of a reel tell most of its fading. Knows small pictures of frames and what a damaged or empty one looks
// like; not where frames come from, or what is done with those chosen.

import { lastCode, type Picture } from '../../picture/picture.js';

/** What a small picture of a frame shows. Levels are code values, 0 black to 1 the last code. */
export interface FrameTraits {
  /** Mean red, green and blue of each block of a grid over the frame, row by row. */
  readonly blocks: Float64Array;
  /** Level of green that 5 % and 95 % of the pixels lie below. */
  readonly low: number;
  readonly high: number;
  /** Share of pixels with a channel at the end of its scale. */
  readonly burnt: number;
  /** Share of pixels near the commonest colour: leader is one colour but for holes and scratches. */
  readonly plain: number;
  /** Detail of one pixel beside detail of four, across and down: falls when a frame is blurred, by motion in one of the two. */
  readonly sharpness: readonly [across: number, down: number];
  /** Share of the height that is a dark bar from side to side within the picture: the frame line, after a jump. */
  readonly darkBar: number;
}

/** Columns and rows of the grid. */
const grid = { columns: 12, rows: 9 } as const;

/** From here on a channel is burnt out. */
const burntLevel = 0.985;

/** Pixels this near to a colour, in every channel, are of that colour. */
const sameColour = 0.045;

/** The first and last rows show the frame line by right. */
const borderShare = 0.1;

/** A dark bar is below this all across. */
const barLevel = 0.06;

/** Levels of a picture, red, green and blue interleaved. */
type Levels = Float32Array;

function blockMeans({ width, height }: Picture, levels: Levels): Float64Array {
  const { columns, rows } = grid;
  const sums = new Float64Array(3 * columns * rows);
  const counts = new Float64Array(columns * rows);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at += 3) {
      const block = Math.floor((y * rows) / height) * columns + Math.floor((x * columns) / width);
      counts[block]++;
      for (let c = 0; c < 3; c++) sums[3 * block + c] += levels[at + c];
    }
  return sums.map((sum, i) => sum / Math.max(1, counts[Math.floor(i / 3)]));
}

/** Cells a side of a coarse grid of colours. */
const cells = 16;

const cellOf = (levels: Levels, at: number): number => {
  const cell = (channel: number) => Math.min(cells - 1, Math.floor(levels[at + channel] * cells));
  return (cell(0) * cells + cell(1)) * cells + cell(2);
};

/** Share of pixels near the commonest colour. */
function plainShare(levels: Levels): number {
  const counts = new Uint32Array(cells ** 3);
  for (let at = 0; at < levels.length; at += 3) counts[cellOf(levels, at)]++;
  const commonest = counts.indexOf(counts.reduce((most, count) => Math.max(most, count), 0));
  const mean = [0, 0, 0];
  for (let at = 0; at < levels.length; at += 3)
    if (cellOf(levels, at) === commonest)
      for (let c = 0; c < 3; c++) mean[c] += levels[at + c] / counts[commonest];
  const isNear = (at: number, channel: number) =>
    Math.abs(levels[at + channel] - mean[channel]) <= sameColour;
  let near = 0;
  for (let at = 0; at < levels.length; at += 3) if (isNear(at, 0) && isNear(at, 1) && isNear(at, 2)) near++;
  return (3 * near) / levels.length;
}

/** Detail below this is the coding's own. */
const leastPower = 1e-7;

/** Green, averaged over squares of `side` pixels. */
function smaller({ width, height }: Picture, levels: Levels, side: number) {
  const [columns, rows] = [Math.floor(width / side), Math.floor(height / side)];
  const means = new Float32Array(columns * rows);
  for (let y = 0; y < rows * side; y++)
    for (let x = 0; x < columns * side; x++)
      means[Math.floor(y / side) * columns + Math.floor(x / side)] +=
        levels[3 * (y * width + x) + 1] / side ** 2;
  return { columns, rows, means };
}

/** Mean square step of green from one pixel to the next, across and down, of pixels taken together in squares of `side`. */
function stepPower(picture: Picture, levels: Levels, side: number): [number, number] {
  const { columns, rows, means } = smaller(picture, levels, side);
  const power: [number, number] = [0, 0];
  const count = Math.max(1, (rows - 1) * (columns - 1));
  for (let row = 0; row + 1 < rows; row++)
    for (let column = 0; column + 1 < columns; column++) {
      const at = row * columns + column;
      power[0] += (means[at + 1] - means[at]) ** 2 / count;
      power[1] += (means[at + columns] - means[at]) ** 2 / count;
    }
  return power;
}

function sharpnessOf(picture: Picture, levels: Levels): [number, number] {
  const [fine, coarse] = [stepPower(picture, levels, 1), stepPower(picture, levels, 4)];
  return [fine[0] / (coarse[0] + leastPower), fine[1] / (coarse[1] + leastPower)];
}

function darkBarShare({ width, height }: Picture, levels: Levels): number {
  const border = Math.floor(height * borderShare);
  let dark = 0;
  for (let y = border; y < height - border; y++) {
    let all = true;
    for (let x = 0; all && x < width; x++) all = levels[3 * (y * width + x) + 1] < barLevel;
    if (all) dark++;
  }
  return dark / height;
}

function quantile(sorted: Float64Array, share: number): number {
  return sorted[Math.floor(share * (sorted.length - 1))];
}

/** @param picture RGB, a few hundred pixels wide */
export function frameTraits(picture: Picture): FrameTraits {
  const most = lastCode(picture.bits);
  const levels = Float32Array.from(picture.data, (code) => code / most);
  const pixels = levels.length / 3;
  const greens = new Float64Array(pixels);
  let burnt = 0;
  for (let i = 0, at = 0; i < pixels; i++, at += 3) {
    greens[i] = levels[at + 1];
    if (Math.max(levels[at], levels[at + 1], levels[at + 2]) >= burntLevel) burnt++;
  }
  greens.sort();
  return {
    blocks: blockMeans(picture, levels),
    low: quantile(greens, 0.05),
    high: quantile(greens, 0.95),
    burnt: burnt / pixels,
    plain: plainShare(levels),
    sharpness: sharpnessOf(picture, levels),
    darkBar: darkBarShare(picture, levels),
  };
}

/** How different two frames look: mean difference of their blocks' colours, 0 to 1. */
export function frameDifference(a: FrameTraits, b: FrameTraits): number {
  return a.blocks.reduce((sum, value, i) => sum + Math.abs(value - b.blocks[i]), 0) / a.blocks.length;
}

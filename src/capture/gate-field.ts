import { percentile } from '../maths/percentile.js';
import type { Triple } from '../maths/matrix3.js';
import type { Box } from '../picture/canvas.js';
import { isBurntOut, type LitStill } from './still-light.js';

/** One cell of the field: its light, and where its middle lies as shares of the field's sides, 0..1. */
export interface FieldCell {
  readonly across: number;
  readonly down: number;
  /** Linear light of red, green, blue. */
  readonly rgb: Triple;
  /** Whether one in a hundred of its pixels, or more, is burnt out: then `rgb` is too low. */
  readonly burntOut: boolean;
}

/** Cells across and down. */
export const fieldGrid = { across: 16, down: 12 } as const;

/** Pixels looked at in a cell, about: enough to average grain away. */
const looks = 1600;

/** Mean of the middle half of some numbers: neither dust nor hot pixels move it. Sorts in place. */
export function middleMean(values: Float64Array): number {
  const sorted = values.sort();
  const [from, to] = [Math.floor(sorted.length / 4), Math.ceil((3 * sorted.length) / 4)];
  return sorted.subarray(from, to).reduce((sum, value) => sum + value, 0) / (to - from);
}

function cellOf(still: LitStill, { x, y, width, height }: Box): Pick<FieldCell, 'rgb' | 'burntOut'> {
  const { picture, light } = still;
  const step = Math.max(1, Math.floor(Math.sqrt((width * height) / looks)));
  const seen: [number[], number[], number[]] = [[], [], []];
  let burnt = 0;
  for (let row = y; row < y + height; row += step)
    for (let column = x; column < x + width; column += step) {
      const at = (row * picture.width + column) * picture.channels;
      if (isBurntOut(still, at)) burnt++;
      for (let c = 0; c < 3; c++) seen[c].push(light[picture.data[at + c]]);
    }
  const [r, g, b] = seen.map((values) => middleMean(Float64Array.from(values)));
  return { rgb: [r, g, b], burntOut: burnt >= 0.01 * seen[0].length };
}

/** Where the part-th of so many equal parts of a length begins. */
const startOf = (part: number, parts: number, length: number) => Math.floor((part * length) / parts);

/** The field cut into {@link fieldGrid} cells, row by row; fewer where it has fewer pixels. */
export function fieldCells(still: LitStill, field: Box): FieldCell[] {
  const across = Math.min(fieldGrid.across, field.width);
  const down = Math.min(fieldGrid.down, field.height);
  const cells: FieldCell[] = [];
  for (let row = 0; row < down; row++)
    for (let column = 0; column < across; column++) {
      const [left, top] = [startOf(column, across, field.width), startOf(row, down, field.height)];
      const box = {
        x: field.x + left,
        y: field.y + top,
        width: startOf(column + 1, across, field.width) - left,
        height: startOf(row + 1, down, field.height) - top,
      };
      cells.push({ across: (column + 0.5) / across, down: (row + 0.5) / down, ...cellOf(still, box) });
    }
  return cells;
}

/** Rows and columns with less than this share of the light of the brightest belong to the gate's mask, not its opening. */
const maskShare = 1 / 8;

/** Share of the opening's sides left out where a mask was found: its soft edge and round corners. */
const maskEdge = 0.04;

/** First and last place at which a profile is lit; a little inside of it where that is not the picture's own border. */
function litSpan(profile: Float64Array): { from: number; to: number } {
  const lit = (value: number) => value >= maskShare * brightest;
  const brightest = percentile(profile.slice(), 0.9);
  const first = profile.findIndex(lit);
  const last = profile.length - 1 - profile.slice().reverse().findIndex(lit);
  const edge = Math.ceil(maskEdge * (last - first + 1));
  const from = first > 0 ? first + edge : 0;
  const to = last < profile.length - 1 ? last - edge : profile.length - 1;
  return to > from ? { from, to } : { from: 0, to: profile.length - 1 };
}

/**
 * The opening of the gate: the picture without the dark mask that many cameras see around it. Each row and column is as
 * bright as its green at the 80th percentile.
 */
export function gateOpening({ picture, light }: LitStill): Box {
  const { width, height, channels, data } = picture;
  const stepX = Math.max(1, Math.floor(width / 400));
  const stepY = Math.max(1, Math.floor(height / 300));
  const green = (x: number, y: number) => light[data[(y * width + x) * channels + 1]];
  const bright = (count: number, step: number, at: (i: number) => number) =>
    percentile(
      Float64Array.from({ length: Math.ceil(count / step) }, (_, i) => at(i * step)),
      0.8,
    );
  const columns = Float64Array.from({ length: width }, (_, x) => bright(height, stepY, (y) => green(x, y)));
  const rows = Float64Array.from({ length: height }, (_, y) => bright(width, stepX, (x) => green(x, y)));
  const [h, v] = [litSpan(columns), litSpan(rows)];
  return { x: h.from, y: v.from, width: h.to - h.from + 1, height: v.to - v.from + 1 };
}

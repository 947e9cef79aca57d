import { ciede2000Run } from '../colour/difference.js';
import type { Picture } from '../picture/picture.js';
import { expandGrey } from '../picture/picture.js';
import type { SeenAs } from './fit.js';
import { labOfCodes } from './fit.js';
import type { Registration } from './register.js';
import { border, samplePixels } from './sample.js';

/** Differences over a picture, cell by cell. */
export interface DifferenceMap {
  /** Pixels a side of a cell. */
  readonly cell: number;
  /** Place of the first cell, pixels. */
  readonly left: number;
  readonly top: number;
  readonly across: number;
  readonly down: number;
  /** CIEDE2000 of the cells' means, row by row. */
  readonly values: Float64Array;
}

/** Cells a side that are enough to see by; noise shrinks with their size. */
const cellsAcross = 180;
const leastCell = 4;

/** Means of the cells of one row. */
function rowMeans(picture: Picture, map: Omit<DifferenceMap, 'values'>, row: number, dx: number, dy: number) {
  const { cell, left, top, across } = map;
  const line = new Float64Array(3 * cell * across);
  const out = new Float64Array(3 * across);
  for (let y = 0; y < cell; y++) {
    samplePixels(picture, left + dx, top + row * cell + y + dy, cell * across, line);
    for (let i = 0; i < line.length; i++)
      out[3 * Math.floor(i / (3 * cell)) + (i % 3)] += line[i] / (cell * cell);
  }
  return out.map((code) => Math.min(1, Math.max(0, code)));
}

/**
 * Where a burnt still differs from what was expected of the plain one.
 * @param expected the plain still through the look @param burnt of the same size, larger than twice the border
 */
export function differenceMap(
  expected: Picture,
  burnt: Picture,
  { dx, dy }: Pick<Registration, 'dx' | 'dy'>,
  seenAs: SeenAs,
): DifferenceMap {
  const [asExpected, asBurnt] = [expandGrey(expected), expandGrey(burnt)];
  const [width, height] = [burnt.width - 2 * border, burnt.height - 2 * border];
  const cell = Math.max(leastCell, Math.ceil(Math.max(width, height) / cellsAcross));
  const [across, down] = [width, height].map((length) => Math.floor(length / cell));
  const place = { cell, left: border, top: border, across, down };
  const values = new Float64Array(across * down);
  for (let row = 0; row < down; row++) {
    const [a, b] = [rowMeans(asExpected, place, row, dx, dy), rowMeans(asBurnt, place, row, 0, 0)];
    const out = values.subarray(row * across, (row + 1) * across);
    ciede2000Run(labOfCodes(a, seenAs), labOfCodes(b, seenAs), across, out);
  }
  return { ...place, values };
}

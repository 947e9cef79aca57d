import { sampleLut } from '../interpolate.js';
import type { CurveTable } from '../lattice.js';
import { ones, zeros } from '../lattice.js';

/** Entries of the way back: one for each code of a 12-bit recording. */
const entries = 4096;
/** Steps in which a curve is walked, four an entry. */
const walked = 4 * entries;

/** One channel of a curve over 0..1, made rising where it falls, held within 0..1. */
function risingCurve(table: CurveTable, channel: number): Float64Array {
  const run = new Float64Array(3 * (walked + 1));
  for (let i = 0; i <= walked; i++) run[3 * i + channel] = i / walked;
  sampleLut(table)(run, walked + 1);
  let highest = 0;
  return Float64Array.from({ length: walked + 1 }, (_, i) => {
    highest = Math.max(highest, Math.min(1, run[3 * i + channel]));
    return highest;
  });
}

/** How far the first index lies at which a rising curve reaches `value`, 0..1; linear between steps. */
function firstAt(curve: Float64Array, value: number): number {
  let [low, high] = [0, walked];
  if (curve[0] >= value) return 0;
  if (curve[walked] < value) return 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (curve[middle] < value) low = middle;
    else high = middle;
  }
  return (low + (value - curve[low]) / (curve[high] - curve[low])) / walked;
}

/** The same for the last index at which the curve is not above `value`. */
function lastAt(curve: Float64Array, value: number): number {
  let [low, high] = [0, walked];
  if (curve[walked] <= value) return 1;
  if (curve[0] > value) return 0;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (curve[middle] > value) high = middle;
    else low = middle;
  }
  return (low + (value - curve[low]) / (curve[high] - curve[low])) / walked;
}

/** The way back of a 1D LUT: each curve read backwards; where it stands still, the middle of what it may have been. */
export function undoCurves(table: CurveTable): CurveTable {
  const values = new Float64Array(3 * entries);
  for (let c = 0; c < 3; c++) {
    const curve = risingCurve(table, c);
    for (let i = 0; i < entries; i++) {
      const value = i / (entries - 1);
      values[3 * i + c] = (firstAt(curve, value) + lastAt(curve, value)) / 2;
    }
  }
  return { kind: '1d', size: entries, domainMin: zeros, domainMax: ones, values };
}

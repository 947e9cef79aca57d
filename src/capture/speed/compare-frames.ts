import { percentile } from '../../maths/percentile.js';
import { cellMeans, type SeenFrame } from './light-frame.js';
import { moveFrame, shiftBetween } from './register-frames.js';

/** How much more light one frame got than another of nearly the same scene. */
export interface LightRatio {
  /** Natural logarithm of the ratio; 0 when nothing can be compared. */
  readonly log: number;
  /** Standard error of `log`; infinite when nothing can be compared. */
  readonly error: number;
}

/** Cells darker than this share of the frame's mean light are noise, mask or frame line. */
const darkShare = 0.15;
const fewestCells = 6;

/** Tukey's biweight at 95 % efficiency, and the median deviation of a normal distribution (Huber 1981). */
const biweightReach = 4.685;
const normalMad = 1.4826;
/** Even two equal frames are not known better than this. */
const leastError = 2e-5;

function median(values: Float64Array): number {
  return percentile(values.slice(), 0.5);
}

/** Tukey's biweight of the ratios of cells. */
function ratioOfCells(from: Float64Array, to: Float64Array, fromLeast: number, toLeast: number): LightRatio {
  const logs = new Float64Array(from.length);
  let count = 0;
  for (let i = 0; i < from.length; i++)
    if (from[i] > fromLeast && to[i] > toLeast) logs[count++] = Math.log(to[i] / from[i]);
  if (count < fewestCells) return { log: 0, error: Infinity };
  const ratios = logs.subarray(0, count);
  let place = median(ratios);
  let weights = 0;
  let spread = 0;
  for (let pass = 0; pass < 6; pass++) {
    spread = Math.max(leastError, normalMad * median(ratios.map((value) => Math.abs(value - place))));
    let sum = 0;
    weights = 0;
    for (const value of ratios) {
      const away = (value - place) / (biweightReach * spread);
      const weight = Math.abs(away) < 1 ? (1 - away * away) ** 2 : 0;
      sum += weight * value;
      weights += weight;
    }
    place = sum / weights;
  }
  return { log: place, error: Math.max(leastError, spread / Math.sqrt(weights)) };
}

/**
 * The ratio of light between two frames: the place, by Tukey's biweight, of the ratios of their cells in light, weave
 * and pans taken out. What moves spreads to both sides; what stands still agrees, and outweighs it.
 */
export function lightRatio(from: SeenFrame, to: SeenFrame): LightRatio {
  const [fromLeast, toLeast] = [darkShare * from.mean, darkShare * to.mean];
  const rough = ratioOfCells(from.cells, to.cells, fromLeast, toLeast);
  if (rough.error === Infinity) return rough;
  const shift = shiftBetween(from, to, Math.exp(rough.log));
  if (shift.x === 0 && shift.y === 0) return rough;
  const moved = cellMeans({ ...from, light: moveFrame(from, shift) });
  const registered = ratioOfCells(moved, to.cells, fromLeast, toLeast);
  return registered.error < rough.error ? registered : rough;
}

/** Root mean square of what is left between two frames after the ratio of light, as a share of the mean light. */
export function changeBetween(from: SeenFrame, to: SeenFrame, logRatio: number): number {
  const gain = Math.exp(logRatio);
  let sum = 0;
  for (let i = 0; i < to.light.length; i++) sum += (to.light[i] - gain * from.light[i]) ** 2;
  return Math.sqrt(sum / to.light.length) / Math.max(to.mean, 1e-9);
}

/** Correlation of two frames' cells, -1..1: near 1 within a scene. 0 when there is nothing to compare. */
export function likeness(from: SeenFrame, to: SeenFrame): number {
  let [n, a, b, aa, bb, ab] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < from.cells.length; i++) {
    const [x, y] = [from.cells[i] / from.mean, to.cells[i] / to.mean];
    if (!(Math.abs(x) + Math.abs(y) < Infinity)) continue;
    n++;
    a += x;
    b += y;
    aa += x * x;
    bb += y * y;
    ab += x * y;
  }
  const scale = Math.sqrt((n * aa - a * a) * (n * bb - b * b));
  return scale > 0 ? (n * ab - a * b) / scale : 0;
}

import { solvePositive } from '../../maths/positive-solve.js';
import { type LevelFilter, surprises } from './level-filter.js';

/** A periodic function fitted to a series. */
export interface PeriodicFit {
  /** How much the sum of squared surprises falls by it. */
  readonly gain: number;
  /** The function at each frame, mean 0 over its period, and its slope by phase, a turn. */
  readonly values: Float64Array;
  readonly slopes: Float64Array;
  /** Amplitude of each harmonic, the fundamental first. */
  readonly amplitudes: readonly number[];
}

/** Cosines and sines of the harmonics 1 to `count`, in turn. @param phases in turns */
export function harmonicWaves(phases: Float64Array, count: number): Float64Array[] {
  const cosine = phases.map((phase) => Math.cos(2 * Math.PI * phase));
  const sine = phases.map((phase) => Math.sin(2 * Math.PI * phase));
  const waves = [cosine, sine];
  for (let k = 2; k <= count; k++) {
    const [c, s] = waves.slice(-2);
    waves.push(
      c.map((value, n) => value * cosine[n] - s[n] * sine[n]),
      s.map((value, n) => value * cosine[n] + c[n] * sine[n]),
    );
  }
  return waves;
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let n = 0; n < a.length; n++) sum += a[n] * b[n];
  return sum;
};

/** Least squares with a price on each amplitude squared. */
function amountsOf(columns: readonly Float64Array[], seen: Float64Array, prices: readonly number[]) {
  const size = columns.length;
  const matrix = new Float64Array(size * size);
  const right = Float64Array.from(columns, (column) => dot(column, seen));
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++)
      matrix[i * size + j] = matrix[j * size + i] = dot(columns[i], columns[j]) + (i === j ? prices[i] : 0);
  return { right, amounts: solvePositive(matrix, right) ?? new Float64Array(size) };
}

/** What is expected of the fundamental beforehand: no light more than triples, variance 1 in logarithms. */
const loose = 1;

/**
 * Fits harmonics by least squares, sent through the filter as the series was. The k-th is expected to be about 1/k of the
 * fundamental, as in a light that jumps: what noise adds beyond that is held down.
 * @param seen the series' surprises @param phases of each frame in turns
 */
export function fitPeriodic(
  filter: LevelFilter,
  seen: Float64Array,
  phases: Float64Array,
  count: number,
): PeriodicFit {
  const waves = harmonicWaves(phases, count);
  const columns = waves.map((wave) => surprises(filter, wave));
  const { amounts: first } = amountsOf(columns.slice(0, 2), seen, [loose, loose]);
  const expected = Math.max(first[0] ** 2 + first[1] ** 2, 1e-12);
  const prices = waves.map((_, i) => (i < 2 ? loose : Math.floor(i / 2 + 1) ** 2 / expected));
  const { right, amounts } = amountsOf(columns, seen, prices);
  const values = new Float64Array(seen.length);
  const slopes = new Float64Array(seen.length);
  for (let i = 0; i < waves.length; i++) {
    const turn = 2 * Math.PI * Math.floor(i / 2 + 1) * (i % 2 === 0 ? -1 : 1);
    const across = waves[i % 2 === 0 ? i + 1 : i - 1];
    for (let n = 0; n < values.length; n++) {
      values[n] += amounts[i] * waves[i][n];
      slopes[n] += amounts[i] * turn * across[n];
    }
  }
  const amplitudes = Array.from({ length: count }, (_, k) => Math.hypot(amounts[2 * k], amounts[2 * k + 1]));
  return { gain: dot(amounts, right), values, slopes, amplitudes };
}

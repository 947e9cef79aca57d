import { solvePositive } from '../../maths/positive-solve.js';
import { surprises } from './level-filter.js';
import { fitTrack, type Track, withNoise } from './track.js';
import type { PeriodicFit } from './periodic-fit.js';

/** The film's way through the recording. */
export interface FollowedPhase {
  /** Film frames that have passed at each frame, from an unknown start. */
  readonly phases: Float64Array;
  readonly tracks: readonly Track[];
  readonly fits: readonly PeriodicFit[];
  /** Standard error of the mean speed, film frames a second. */
  readonly error: number;
}

/** Seconds between two knots of the phase, which runs straight from one to the next. */
const knotSeconds = 1.5;
/** How much a projector's speed is expected to change from one knot to the next, a share (common practice, no source). */
const usualWander = 0.001;
/** Passes with the fundamental alone, which pulls from farther off, and with all harmonics. */
const roughPasses = 4;
const passes = 8;

/** Weight of each knot at each frame: hats. */
function hats(frames: number, knots: number): Float64Array[] {
  const spacing = Math.max(1, frames - 1) / (knots - 1);
  return Array.from({ length: knots }, (_, knot) =>
    new Float64Array(frames).map((_value, n) => Math.max(0, 1 - Math.abs(n / spacing - knot))),
  );
}

/** The tracks' wish for every knot to move: normal equations of the phase, the waves held. */
function normal(tracks: readonly Track[], fits: readonly PeriodicFit[], knots: readonly Float64Array[]) {
  const size = knots.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  tracks.forEach(({ filter, seen, periods }, t) => {
    const { values, slopes } = fits[t];
    const model = surprises(filter, values);
    const columns = knots.map((hat) =>
      surprises(
        filter,
        hat.map((share, n) => share * periods * slopes[n]),
      ),
    );
    for (let i = 0; i < size; i++) {
      for (let n = 0; n < seen.length; n++) right[i] += columns[i][n] * (seen[n] - model[n]);
      for (let j = 0; j < size; j++)
        for (let n = 0; n < seen.length; n++) matrix[i * size + j] += columns[i][n] * columns[j][n];
    }
  });
  return { matrix, right };
}

/** The price of bends: second differences of the phase, each expected as small as the speed's wander makes it. */
function addSmoothness(matrix: Float64Array, right: Float64Array, moved: Float64Array, bend: number): void {
  const size = moved.length;
  const price = 1 / bend ** 2;
  for (let k = 1; k + 1 < size; k++) {
    const terms = [
      [k - 1, 1],
      [k, -2],
      [k + 1, 1],
    ] as const;
    const bent = terms.reduce((sum, [i, share]) => sum + share * moved[i], 0);
    for (const [i, a] of terms) {
      right[i] -= price * a * bent;
      for (const [j, b] of terms) matrix[i * size + j] += price * a * b;
    }
  }
  // The start of the phase is no part of the speed: the waves have one of their own.
  for (let i = 0; i < size; i++) matrix[i * size + i] += 1e-9 * price + 1;
}

/**
 * Follows the film's phase from a steady speed on: waves and phase in turn, by Gauss and Newton, the phase a line with
 * knots. Light and change of the picture share one phase.
 */
export function followPhase(
  given: readonly Track[],
  steady: Float64Array,
  {
    filmFps,
    cameraFps,
    harmonics,
  }: { readonly filmFps: number; readonly cameraFps: number; readonly harmonics: number },
): FollowedPhase {
  const frames = steady.length;
  const seconds = frames / cameraFps;
  const knots = hats(frames, Math.max(2, Math.round(seconds / knotSeconds) + 1));
  const bend = usualWander * filmFps * knotSeconds;
  const moved = new Float64Array(knots.length);
  let phases = steady;
  let tracks = given;
  let error = Infinity;
  for (let pass = 0; pass < passes; pass++) {
    const fits = tracks.map((track) => fitTrack(track, phases, pass < roughPasses ? 1 : harmonics));
    const { matrix, right } = normal(tracks, fits, knots);
    addSmoothness(matrix, right, moved, bend);
    const step = solvePositive(matrix, right);
    if (step === undefined) break;
    step.forEach((value, k) => (moved[k] += value));
    phases = steady.map((phase, n) => knots.reduce((sum, hat, k) => sum + moved[k] * hat[n], phase));
    const line = Float64Array.from(knots, (_, k) => k - (knots.length - 1) / 2);
    error = slopeError(matrix, line) / (seconds / (knots.length - 1));
    if (pass === roughPasses)
      tracks = tracks.map((track) => withNoise(track, fitTrack(track, phases, harmonics).values));
  }
  return { phases, tracks, fits: tracks.map((track) => fitTrack(track, phases, harmonics)), error };
}

/** Standard error of the least-squares slope through the knots, a knot, from the inverse of their normal matrix. */
function slopeError(matrix: Float64Array, line: Float64Array): number {
  const along = solvePositive(matrix, line);
  const square = line.reduce((sum, value) => sum + value * value, 0);
  return along === undefined
    ? Infinity
    : Math.sqrt(line.reduce((sum, v, i) => sum + v * along[i], 0)) / square;
}

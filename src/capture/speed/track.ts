import { percentile } from '../../maths/percentile.js';
import { around, sceneStarts } from './cuts.js';
import type { LevelFilter } from './level-filter.js';
import { surprises } from './level-filter.js';
import { fitLevelNoise } from './level-noise.js';
import { fitPeriodic, type PeriodicFit } from './periodic-fit.js';
import type { Series } from './series.js';

/** Something of the recording that repeats with the film: what its period is, and what it looks like without. */
export interface Track {
  readonly levels: Float64Array;
  /** Variance of each step as far as it is known beforehand; infinite where a scene begins. */
  readonly variances: Float64Array;
  /** Periods in one film frame. */
  readonly periods: number;
  readonly filter: LevelFilter;
  readonly seen: Float64Array;
}

type Raw = Pick<Track, 'levels' | 'variances' | 'periods'>;

/** The track with its noise found anew, what is known of its periodic part taken out first. */
export function withNoise({ levels, variances, periods }: Raw, periodic?: Float64Array): Track {
  const rest = periodic === undefined ? levels : levels.map((level, n) => level - periodic[n]);
  const filter = fitLevelNoise(rest, variances);
  return { levels, variances, periods, filter, seen: surprises(filter, levels) };
}

/** Fits the track along the film's phase. @param filmPhases film frames that have passed at each frame */
export function fitTrack(
  { filter, seen, periods }: Track,
  filmPhases: Float64Array,
  harmonics: number,
): PeriodicFit {
  return fitPeriodic(
    filter,
    seen,
    filmPhases.map((phase) => periods * phase),
    harmonics,
  );
}

/** Film frames that have passed at each frame, at a steady speed. */
export function steadyPhases(frames: number, filmFps: number, cameraFps: number): Float64Array {
  return new Float64Array(frames).map((_, n) => (n * filmFps) / cameraFps);
}

/** The light's level, natural logarithms: the steps between frames summed, from 0 at each new scene. */
export function lightTrack(series: Series, blades: number): Track {
  const starts = sceneStarts(series);
  let level = 0;
  const levels = series.ratios.map((ratio, n) => (level = starts[n] ? 0 : level + ratio));
  const variances = series.errors.map((error, n) => (starts[n] ? Infinity : error ** 2));
  return withNoise({ levels, variances, periods: blades });
}

const neighbourhood = 25;
/** A cut changes more than any movement: what lies above this share of the usual change is taken for it. */
const most = 1.6;

/** How much of a film frame's change each frame shows: about 1 where a new film frame came, near 0 where none did. */
export function changeShares(series: Series): Float64Array {
  const starts = sceneStarts(series);
  const middle = percentile(series.changes.slice(1), 0.75);
  return series.changes.map((change, n) => {
    const usual = around(series.changes, n, neighbourhood, 0.75);
    return starts[n] ? 0.5 : Math.min(most, change / Math.max(usual, 0.05 * middle, 1e-9));
  });
}

/** The change of the picture, whose period is the film frame. */
export function changeTrack(series: Series): Track {
  const levels = changeShares(series);
  const variances = levels.map((_, n) => (n === 0 ? Infinity : 1e-6));
  return withNoise({ levels, variances, periods: 1 });
}

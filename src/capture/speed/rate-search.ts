import { logLikelihood, surprises } from './level-filter.js';
import { sinusoidLikelihoods, stretchCounts } from './periodogram.js';
import { fitTrack, steadyPhases, type Track, withNoise } from './track.js';

/** A speed of the projector that the recording speaks for. */
export interface RateCandidate {
  readonly filmFps: number;
  /** Logarithm of its likelihood over that of nothing that repeats. */
  readonly likelihood: number;
}

export interface RateSearch {
  /** Likeliest first; never empty, but a likelihood near 0 or below speaks for nothing. */
  readonly candidates: readonly RateCandidate[];
  /** The tracks, noise found with the likeliest speed taken out. */
  readonly tracks: readonly Track[];
}

export interface SpeedRange {
  readonly least: number;
  readonly most: number;
}

/** A stretch is no shorter: beats and the film's cadence need some time to show. */
const shortestStretchS = 3;
/** Steps of the walk in one period of what the whole recording can tell apart. */
const oversampling = 4;
const mostCandidates = 6;

/** Local maxima, highest first. */
function peaks(values: readonly number[]): number[] {
  const tops = values.flatMap((value, i) =>
    value >= (values[i - 1] ?? -Infinity) && value > (values[i + 1] ?? -Infinity) ? [i] : [],
  );
  return tops.sort((a, b) => values[b] - values[a]).slice(0, mostCandidates);
}

/** The place of a maximum between two places. */
function climb(f: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  for (let pass = 0; pass < 20; pass++) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
    if (f(a) > f(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

function walk(tracks: readonly Track[], cameraFps: number, { least, most }: SpeedRange): RateCandidate[] {
  const seconds = tracks[0].seen.length / cameraFps;
  const periods = Math.max(...tracks.map((track) => track.periods));
  const step = 1 / (oversampling * periods * seconds);
  const speeds = Array.from({ length: Math.floor((most - least) / step) + 1 }, (_, i) => least + i * step);
  const walked = speeds.map((speed) => sinusoidLikelihoods(tracks, speed, cameraFps));
  const ways = stretchCounts.flatMap((count, way) =>
    count === 1 || seconds / count >= shortestStretchS
      ? [{ way, values: walked.map((values) => values[way]) }]
      : [],
  );
  const top = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), -Infinity);
  const { way, values } = ways.reduce((a, b) => (top(b.values) > top(a.values) ? b : a));
  const at = (speed: number) => sinusoidLikelihoods(tracks, speed, cameraFps)[way];
  return peaks(values)
    .map((i) => climb(at, speeds[i] - step, speeds[i] + step))
    .map((filmFps) => ({ filmFps, likelihood: at(filmFps) }))
    .sort((a, b) => b.likelihood - a.likelihood);
}

/** Harmonics that are taken out of the tracks before their noise is found. */
const harmonics = 5;

/** The tracks with what repeats at a speed taken out before their noise is found, and the logarithm of what makes them likely. */
function tracksAt(given: readonly Track[], filmFps: number, cameraFps: number) {
  const phases = steadyPhases(given[0].seen.length, filmFps, cameraFps);
  let likelihood = 0;
  const tracks = given.map((track) => {
    const { values } = fitTrack(track, phases, harmonics);
    const quiet = withNoise(track, values);
    const rest = quiet.levels.map((level, n) => level - values[n]);
    likelihood += logLikelihood(quiet.filter, surprises(quiet.filter, rest));
    return quiet;
  });
  return { tracks, likelihood };
}

/**
 * Searches the speeds of a range for those with which light and change of picture repeat. While flicker still counts as
 * noise, a harmonic can pass for the likeliest speed: each candidate's own noise decides between them.
 */
export function searchRate(given: readonly Track[], cameraFps: number, range: SpeedRange): RateSearch {
  const { tracks } = walk(given, cameraFps, range)
    .map(({ filmFps }) => tracksAt(given, filmFps, cameraFps))
    .reduce((best, next) => (next.likelihood > best.likelihood ? next : best));
  return { candidates: walk(tracks, cameraFps, range), tracks };
}

import { beatHz, type Chopper, flickerHz, flickerLeft, usualOpenShare } from '../shutter.js';
import { type FilmOnFrames, layFilmOnFrames } from './film-on-frames.js';
import { measureFlicker, type MeasuredFlicker } from './flicker.js';
import { followPhase, type FollowedPhase } from './follow-phase.js';
import { frameLineJumps } from './frame-line.js';
import { type RateCandidate, searchRate } from './rate-search.js';
import { remedyFor, type Remedy } from './remedy.js';
import type { Series } from './series.js';
import { changeShares, changeTrack, lightTrack, steadyPhases } from './track.js';

/** What is known of a test recording beforehand. */
export interface SpeedSettings {
  /** What the projector is said to run at, film frames a second. */
  readonly nominalFps: number;
  readonly blades: number;
  /** Share of the time in which light passes. */
  readonly openShare?: number;
  readonly cameraFps: number;
  /** The camera's exposure time, seconds, if it is known. */
  readonly exposureS?: number;
}

/**
 * How sure a speed is. `sure`: nothing else within reach fits. `likely`: another fits as well, but lies much farther from
 * the nominal speed. `open`: others fit as well. `unknown`: nothing in the recording repeats.
 */
export type Confidence = 'sure' | 'likely' | 'open' | 'unknown';

export interface SpeedReport {
  readonly frames: number;
  /** Frames from the beginning on that speed, flicker and film frames were read from. */
  readonly framesRead: number;
  readonly seconds: number;
  readonly settings: SpeedSettings;
  readonly confidence: Confidence;
  /** Absent when the speed is unknown. */
  readonly speed?: {
    readonly filmFps: number;
    /** Standard error of `filmFps`. */
    readonly error: number;
    /** Change against the nominal speed, 0.01 = 1 % faster. */
    readonly change: number;
    /** How much the speed wanders, standard deviation as a share of it. */
    readonly wander: number;
    /** Other speeds that would look the same, nearest to the nominal first. */
    readonly others: readonly number[];
    /** What it was read from. */
    readonly from: readonly ('light' | 'pictures')[];
    /** Pulses of light a second, and the beat that the camera makes of them. */
    readonly flickerHz: number;
    readonly beatHz: number;
  };
  readonly flicker: Pick<MeasuredFlicker, 'percent' | 'stops' | 'error' | 'seen'> & {
    /** What shutter and speed make one expect, when the exposure is known. */
    readonly expectedPercent?: number;
  };
  readonly remedy?: Remedy;
  /** Absent when the picture's changes do not tell. */
  readonly filmOnFrames?: FilmOnFrames;
  readonly jumps: readonly { readonly seconds: number; readonly share: number }[];
  /** For the plot: logarithm of each frame's light, scene taken out; as flicker alone would make it; the pulse's phase. */
  readonly light: Float64Array;
  readonly wave: Float64Array;
  readonly pulsePhases: Float64Array;
}

/** Projectors are looked for within this share of the nominal speed (the trim's reach; common practice, no source). */
export const reach = 0.15;
/** Speeds are expected within about this share of the nominal one (common practice, no source). */
const usualDeviation = 0.05;
/** Log likelihood from which something is believed to repeat, far above the best of thousands of tries on noise. */
const believed = 15;
/** Speeds whose log likelihoods are nearer than this cannot be told apart; odds of more than this are 'likely'. */
const undecided = 8;
const likelyOdds = 1.5;
/** Speeds nearer to each other than this share are one. */
const same = 0.003;
const harmonics = 5;
/** Changes that are explained less than so tell nothing about film frames. */
const tellingShare = 0.3;
/** Shortest recordings in which a beat and a cadence can be told. */
export const fewestFrames = 48;

interface Reading {
  readonly filmFps: number;
  readonly likelihood: number;
  readonly followed: FollowedPhase;
  readonly onFrames: FilmOnFrames;
}

function readAt(
  candidate: RateCandidate,
  given: FollowedPhase['tracks'],
  series: Series,
  settings: SpeedSettings,
): Reading {
  const { cameraFps, blades, openShare = usualOpenShare, exposureS } = settings;
  const steady = steadyPhases(series.frames, candidate.filmFps, cameraFps);
  const followed = followPhase(given, steady, { filmFps: candidate.filmFps, cameraFps, harmonics });
  const { phases } = followed;
  const filmFps = ((phases[phases.length - 1] - phases[0]) / (phases.length - 1)) * cameraFps;
  const onFrames = layFilmOnFrames(phases, changeShares(series), {
    chopper: { filmFps, blades, openShare },
    cameraFps,
    ...(exposureS === undefined ? {} : { exposureS }),
  });
  return { filmFps, likelihood: candidate.likelihood, followed, onFrames };
}

/** Wander of the speed about its mean, a share. */
function wanderOf(phases: Float64Array, filmFps: number, cameraFps: number): number {
  const span = Math.max(1, Math.round(cameraFps));
  let [sum, count] = [0, 0];
  for (let n = span; n < phases.length; n += span, count++)
    sum += (((phases[n] - phases[n - span]) * cameraFps) / span / filmFps - 1) ** 2;
  return Math.sqrt(sum / Math.max(1, count));
}

/** So much of a recording is read for speed and flicker: what comes later says no more. Jumps are looked for in all of it. */
const mostFrames = 1800;

function beginningOf(series: Series): Series {
  const cut = (values: Float64Array) => values.subarray(0, mostFrames);
  return {
    frames: Math.min(mostFrames, series.frames),
    ratios: cut(series.ratios),
    errors: cut(series.errors),
    changes: cut(series.changes),
    likeness: cut(series.likeness),
    lines: cut(series.lines),
    moves: cut(series.moves),
  };
}

/** Reads speed and flicker off a recording of at least {@link fewestFrames} frames. */
export function measureSpeed(whole: Series, settings: SpeedSettings): SpeedReport {
  const series = beginningOf(whole);
  const { nominalFps, blades, cameraFps, exposureS, openShare = usualOpenShare } = settings;
  const range = { least: nominalFps * (1 - reach), most: nominalFps * (1 + reach) };
  const search = searchRate([lightTrack(series, blades), changeTrack(series)], cameraFps, range);
  const prior = (filmFps: number) => -0.5 * ((filmFps / nominalFps - 1) / usualDeviation) ** 2;
  const [top] = search.candidates;
  const readings = search.candidates
    .filter(
      ({ likelihood, filmFps }) =>
        likelihood > top.likelihood - undecided && Math.abs(filmFps / nominalFps - 1) <= 1.01 * reach,
    )
    .map((candidate) => readAt(candidate, search.tracks, series, settings));
  const score = (reading: Reading) => reading.likelihood + prior(reading.filmFps);
  const [best, ...rest] = readings.sort((a, b) => score(b) - score(a));
  const others = rest.filter(
    (other) =>
      best.likelihood - other.likelihood < undecided && Math.abs(other.filmFps / best.filmFps - 1) > same,
  );
  const { filmFps, followed, onFrames } = best;
  const [light] = followed.tracks;
  const pulsesExposed = exposureS === undefined ? undefined : exposureS * blades * filmFps;
  const flicker = measureFlicker(light, followed.phases, pulsesExposed);
  const known = top.likelihood > believed;
  const odds = Math.min(...others.map((other) => score(best) - score(other)));
  const confidence = !known
    ? 'unknown'
    : others.length === 0
      ? 'sure'
      : odds > likelyOdds
        ? 'likely'
        : 'open';
  const chopper: Chopper = { filmFps: known ? filmFps : nominalFps, blades, openShare };
  const byPictures = followed.fits[1].gain / 2 > believed;
  return {
    frames: whole.frames,
    framesRead: series.frames,
    seconds: whole.frames / cameraFps,
    settings,
    confidence,
    ...(known
      ? {
          speed: {
            filmFps,
            error: followed.error,
            change: filmFps / nominalFps - 1,
            wander: wanderOf(followed.phases, filmFps, cameraFps),
            others: others.map((other) => other.filmFps),
            from: [...(flicker.seen ? ['light' as const] : []), ...(byPictures ? ['pictures' as const] : [])],
            flickerHz: flickerHz(chopper),
            beatHz: beatHz(chopper, cameraFps),
          },
          remedy: remedyFor(chopper, cameraFps, exposureS),
        }
      : {}),
    flicker: {
      percent: flicker.percent,
      stops: flicker.stops,
      error: flicker.error,
      seen: flicker.seen,
      ...(exposureS === undefined
        ? {}
        : { expectedPercent: 100 * flickerLeft(chopper, exposureS).modulation }),
    },
    ...(known && onFrames.explained > tellingShare ? { filmOnFrames: onFrames } : {}),
    jumps: frameLineJumps(whole.lines, whole.moves).map(({ frame, share }) => ({
      seconds: frame / cameraFps,
      share,
    })),
    light: flicker.light,
    wave: flicker.wave,
    pulsePhases: followed.phases.map((phase) => blades * phase),
  };
}

import { surprises } from './level-filter.js';
import type { Track } from './track.js';

/** The recording may be taken in so many stretches, each with a phase of its own: the projector's speed wanders. */
export const stretchCounts = [1, 2, 4, 8] as const;
const pieces = 8;

/** Sums over one piece: cosine and sine with themselves, with each other, with the series. */
const sumsAPiece = 5;

function pieceSums({ filter, seen, periods }: Track, turnsAFilmFrame: number): Float64Array {
  const length = seen.length;
  const turn = 2 * Math.PI * ((periods * turnsAFilmFrame) % 1);
  const cosine = surprises(
    filter,
    new Float64Array(length).map((_, n) => Math.cos(turn * n)),
  );
  const sine = surprises(
    filter,
    new Float64Array(length).map((_, n) => Math.sin(turn * n)),
  );
  const sums = new Float64Array(pieces * sumsAPiece);
  for (let n = 0; n < length; n++) {
    const at = sumsAPiece * Math.floor((pieces * n) / length);
    sums[at] += cosine[n] * cosine[n];
    sums[at + 1] += sine[n] * sine[n];
    sums[at + 2] += cosine[n] * sine[n];
    sums[at + 3] += cosine[n] * seen[n];
    sums[at + 4] += sine[n] * seen[n];
  }
  return sums;
}

/** Variance expected of an amplitude beforehand, as in the fit of all harmonics. */
const loose = 1;

function gainOf(sums: Float64Array, from: number, to: number): number {
  const s = [loose, loose, 0, 0, 0];
  for (let i = from * sumsAPiece; i < to * sumsAPiece; i++) s[i % sumsAPiece] += sums[i];
  const [cc, ss, cs, cy, sy] = s;
  return (ss * cy * cy - 2 * cs * cy * sy + cc * sy * sy) / (cc * ss - cs * cs);
}

/** What came fewer times in a stretch is not known to repeat: a lamp that warms up looks like a part of a slow beat. */
const fewestTurns = 2;

/** Turns that a period makes in a recording, as its frames see it: only what is left over whole turns a frame shows. */
function turnsSeen({ seen, periods }: Track, turnsAFilmFrame: number): number {
  const turn = periods * turnsAFilmFrame;
  return Math.abs(turn - Math.round(turn)) * seen.length;
}

/**
 * Log likelihood of a sinusoid in each track over none, at one speed of the projector, for each of the
 * {@link stretchCounts}: Schwarz's price (1978) of their amplitudes taken off.
 */
export function sinusoidLikelihoods(tracks: readonly Track[], filmFps: number, cameraFps: number): number[] {
  const totals = stretchCounts.map(() => 0);
  for (const track of tracks) {
    const sums = pieceSums(track, filmFps / cameraFps);
    const turns = turnsSeen(track, filmFps / cameraFps);
    stretchCounts.forEach((count, i) => {
      const size = pieces / count;
      const gain = (stretch: number) =>
        turns < fewestTurns * count ? 0 : gainOf(sums, stretch * size, (stretch + 1) * size);
      for (let stretch = 0; stretch < count; stretch++)
        totals[i] += gain(stretch) / 2 - Math.log(track.seen.length);
    });
  }
  return totals;
}

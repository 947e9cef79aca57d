import type { Chopper } from '../shutter.js';

/** How film frames fall on the recording's frames, as far as the picture's changes tell. */
export interface FilmOnFrames {
  /** Frames that show the very same one film frame as the frame before. */
  readonly duplicated: number;
  /** Frames in which two film frames mix: the lesser gives more than a tenth of the light. */
  readonly blended: number;
  /** Film frames that no frame shows. */
  readonly lost: number;
  /** Share of the changes' variance that this explains, 0..1. */
  readonly explained: number;
  /** The exposure that explains them best, seconds: the given one, if one was given. */
  readonly exposureS: number;
}

/** Time a blade's edge takes to cross the picture, as a share of the pulse (common practice, no source). */
const usualEdge = 0.15;
const slices = 128;

/** Light of the first so many slices of a pulse that begins in the middle of the dark, the whole = 1. */
function summedPulse(openShare: number): Float64Array {
  const sums = new Float64Array(slices + 1);
  for (let i = 0; i < slices; i++) {
    const away = Math.abs((i + 0.5) / slices - 0.5);
    const level = Math.min(1, Math.max(0, (openShare / 2 - away) / usualEdge + 0.5));
    sums[i + 1] = sums[i] + level;
  }
  return sums.map((sum) => sum / sums[slices]);
}

const blendShare = 0.1;
const seenShare = 0.02;

interface Guess {
  /** Film frames that have passed at the start of each exposure; the pull-down stands at whole ones. */
  readonly phases: Float64Array;
  /** Film frames that pass during an exposure. */
  readonly span: number;
  readonly blades: number;
  readonly pulse: Float64Array;
}

/** Shares of light of the film frames that each exposure reaches, from film frame `first` on. */
function sharesAt({ phases, span, blades, pulse }: Guess, n: number): { first: number; shares: number[] } {
  const lightTo = (film: number) => {
    const pulses = blades * film;
    const whole = Math.floor(pulses);
    return whole + pulse[Math.round((pulses - whole) * slices)];
  };
  const [from, to] = [phases[n], phases[n] + span];
  const first = Math.floor(from);
  const shares: number[] = [];
  for (let film = first; film < to; film++)
    shares.push(lightTo(Math.min(to, film + 1)) - lightTo(Math.max(from, film)));
  const total = Math.max(
    1e-9,
    shares.reduce((sum, share) => sum + share, 0),
  );
  return { first, shares: shares.map((share) => share / total) };
}

/** The square of the change from one mix of film frames to the next: 1 from one film frame to another. */
function changeOfMix(a: ReturnType<typeof sharesAt>, b: ReturnType<typeof sharesAt>): number {
  let moved = 0;
  let sum = 0;
  for (let film = Math.min(a.first, b.first); film < b.first + b.shares.length; film++) {
    moved += (b.shares[film - b.first] ?? 0) - (a.shares[film - a.first] ?? 0);
    sum += moved * moved;
  }
  return sum;
}

/** Squared correlation, 0 where it is negative: less change where more is foretold explains nothing. */
function explainedShare(foretold: Float64Array, squares: Float64Array): number {
  const n = foretold.length;
  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / n;
  const [mx, my] = [mean(foretold), mean(squares)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    xx += (foretold[i] - mx) ** 2;
    yy += (squares[i] - my) ** 2;
    xy += (foretold[i] - mx) * (squares[i] - my);
  }
  return xy > 0 && xx > 1e-9 && yy > 0 ? (xy * xy) / (xx * yy) : 0;
}

function count(guess: Guess): Pick<FilmOnFrames, 'duplicated' | 'blended' | 'lost'> {
  let [duplicated, blended, lost] = [0, 0, 0];
  let before: number[] = [];
  let last = NaN;
  for (let n = 0; n < guess.phases.length; n++) {
    const { first, shares } = sharesAt(guess, n);
    const films = (least: number) => shares.flatMap((share, i) => (share > least ? [first + i] : []));
    const clear = films(blendShare);
    if (clear.length > 1) blended++;
    if (clear.length === 1 && before.length === 1 && before[0] === clear[0]) duplicated++;
    before = clear;
    const seen = films(seenShare);
    if (seen.length > 0) {
      lost += Math.max(0, seen[0] - last - 1 || 0);
      last = seen[seen.length - 1];
    }
  }
  return { duplicated, blended, lost };
}

/** Exposures that are tried when none is given, shares of the camera's frame time; and places of the pull-down. */
const exposureSteps = 12;
const places = 48;

/**
 * Lays film frames onto the recording so that the changes between its frames come out best: the place of the pull-down
 * is searched, and the exposure where it is not known.
 * @param phases film frames that have passed at each frame, from an unknown start
 * @param changes share of a film frame's change that each frame shows
 */
export function layFilmOnFrames(
  phases: Float64Array,
  changes: Float64Array,
  { chopper, cameraFps, exposureS }: { chopper: Chopper; cameraFps: number; exposureS?: number },
): FilmOnFrames {
  const pulse = summedPulse(chopper.openShare);
  const squares = changes.slice(1).map((change) => change * change);
  const exposures =
    exposureS === undefined
      ? Array.from({ length: exposureSteps }, (_, i) => (i + 1) / exposureSteps / cameraFps)
      : [exposureS];
  let best: { readonly guess: Guess; readonly explained: number; readonly exposureS: number } | undefined;
  for (const exposure of exposures)
    for (let place = 0; place < places; place++) {
      const guess: Guess = {
        phases: phases.map((phase) => phase + place / places),
        span: exposure * chopper.filmFps,
        blades: chopper.blades,
        pulse,
      };
      let before = sharesAt(guess, 0);
      const foretold = squares.map((_, i) => {
        const here = sharesAt(guess, i + 1);
        const change = changeOfMix(before, here);
        before = here;
        return change;
      });
      const explained = explainedShare(foretold, squares);
      if (best === undefined || explained > best.explained) best = { guess, explained, exposureS: exposure };
    }
  return { ...count(best!.guess), explained: best!.explained, exposureS: best!.exposureS };
}

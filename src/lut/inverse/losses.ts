import { type CodeEnds, rangeScale } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import { findFolds, type Folds } from './folds.js';
import { recorded } from './normal-equations.js';

/** Why a colour does not come back. */
export const losses = {
  'burnt-out': 'recorded at the highest code of a channel, together with lighter colours',
  blocked: 'recorded at the lowest code of a channel, together with darker colours',
  folded: 'the look turns back on itself: two far colours were recorded as one',
  squeezed: 'recorded so near to its neighbours that the codes no longer tell them apart',
  coarse: 'still in the recording; a table with more points would bring it nearer',
} as const satisfies Record<string, string>;

export type Loss = keyof typeof losses;

/** Codes of 255 within which a colour counts as brought back. */
export const comesBackWithin = 4;

/** Two recordings within a code of each other count as the same. */
const alike = (lastCode: number): number => 1 / lastCode;

/** The recording between a look and its way back. */
export interface Recording {
  readonly bits: number;
  /** Codes between which pictures lie before the look; the full range when left out. */
  readonly picture?: CodeEnds;
  /** Codes at which a channel of the recording ends; those of the full range when left out. */
  readonly ends?: CodeEnds;
}

interface Trip {
  readonly before: readonly number[];
  /** As recorded, codes of the recording over its last code. */
  readonly burnt: readonly number[];
  readonly after: readonly number[];
}

function causeOf(
  look: Run,
  folds: Folds,
  { before, burnt, after }: Trip,
  lastCode: number,
  { black, white }: CodeEnds,
): Loss {
  // The code that a level was rounded to may lie half a step to either side of it.
  const half = 0.5 / lastCode;
  if (folds.meets(before, burnt)) return 'folded';
  if (burnt.some((code) => code >= white - half)) return 'burnt-out';
  if (burnt.some((code) => code <= black + half)) return 'blocked';
  const again = Float64Array.from(after);
  look(again, 1);
  const same = burnt.every((code, c) => Math.abs(recorded(again[c]) - code) <= alike(lastCode));
  return same ? 'squeezed' : 'coarse';
}

/** What became of colours on their way through the look, the recording and back. */
export interface Losses {
  /** Largest difference of a channel, codes of 255. */
  readonly errors: Float64Array;
  /** For each colour: why it does not come back, or undefined where it does. */
  readonly causes: readonly (Loss | undefined)[];
}

/** Judges colours and leaves them as they are. @param colours r g b code values 0..1 */
export type LossJudge = (colours: Float64Array, count: number) => Losses;

const tripleAt = (run: Float64Array, i: number) => [run[3 * i], run[3 * i + 1], run[3 * i + 2]];

/**
 * Sends colours through the look, a recording and the way back.
 * @param look the burnt-in look @param back its undoing @param recording what lies between the two
 */
export function lossJudge(look: Run, back: Run, recording: Recording): LossJudge {
  const folds = findFolds(look, recording.picture);
  const lastCode = 2 ** recording.bits - 1;
  const ends = recording.ends ?? rangeScale.full;
  return (colours, count) => {
    const burnt = colours.slice(0, 3 * count);
    look(burnt, count);
    for (let i = 0; i < burnt.length; i++) burnt[i] = Math.round(recorded(burnt[i]) * lastCode) / lastCode;
    const after = burnt.slice();
    back(after, count);
    const errors = largestErrors(colours, after);
    const causes = Array.from(errors, (error, i) => {
      if (error <= comesBackWithin) return undefined;
      const trip = { before: tripleAt(colours, i), burnt: tripleAt(burnt, i), after: tripleAt(after, i) };
      return causeOf(look, folds, trip, lastCode, ends);
    });
    return { errors, causes };
  };
}

/** Holds `after` within 0..1, in place, and gives each colour's largest difference of a channel in codes of 255. */
function largestErrors(before: Float64Array, after: Float64Array): Float64Array {
  const errors = new Float64Array(after.length / 3);
  for (let i = 0; i < after.length; i++) {
    after[i] = recorded(after[i]);
    const colour = Math.floor(i / 3);
    errors[colour] = Math.max(errors[colour], 255 * Math.abs(after[i] - before[i]));
  }
  return errors;
}

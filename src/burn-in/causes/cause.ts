import type { TransferFunction } from '../../colour/transfer-functions/index.js';
import type { Lut } from '../../lut/lattice.js';
import type { Run } from '../../maths/matrix3.js';

/** What a cause may know when it is asked what it would have done to the plain still. */
export interface CauseContext {
  readonly lut: Lut;
  /** The LUT as the file says: tetrahedral, held within 0..1. */
  readonly look: Run;
  /** The curve with which the camera writes light down. */
  readonly cameraCurve: TransferFunction;
  /** Whether the file itself meets the burnt still: then what takes long need not be tried. */
  readonly holds: boolean;
  /** Other files that may have been loaded instead. */
  readonly others: readonly { readonly name: string; readonly lut: Lut }[];
  /** How far a prediction lies from the burnt still: root mean square, codes of 255. For searches. */
  readonly misfit: (predict: Run) => number;
}

/** One way in which a cause shows. */
export interface Variant {
  /** A clause: `taken for legal before the look`. */
  readonly words: string;
  /** Code values of the plain still -> of the burnt one, in place. */
  readonly predict: Run;
}

/** A usual cause why a burnt-in look differs from its file. */
export interface Cause {
  readonly title: string;
  /** What to do about it, one sentence. */
  readonly advice: string;
  /** True when the picture may well be as good as it should be: what counts is how far it differs. */
  readonly gentle: boolean;
  variants(context: CauseContext): readonly Variant[];
}

/** Holds codes within 0..1, as every device does between two steps. What is no number becomes 0. */
export const held: Run = (values, count) => {
  for (let i = 0; i < 3 * count; i++) values[i] = values[i] > 0 ? Math.min(1, values[i]) : 0;
};

/** Steps one after the other, codes held within 0..1 after each. */
export const inTurn =
  (...runs: readonly Run[]): Run =>
  (values, count) => {
    for (const run of runs) {
      run(values, count);
      held(values, count);
    }
  };

/** The same change of every channel. */
export const onEach =
  (change: (code: number) => number): Run =>
  (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = change(values[i]);
  };

import type { Signals } from '../../jobs/signal.js';
import type { LutFile } from '../../lut/formats/lut-format.js';
import type { Finding } from '../../lut/checks/index.js';
import type { ClippingShares } from '../../preview/clipping-marks.js';
import type { UnusedStill } from '../../jobs/usable-stills.js';
import type { Measurement } from '../../measure/index.js';
import type { Picture } from '../../picture/picture.js';
import type { Card } from '../state/sheet.js';
import type { FlatLattice } from '../worker/tasks.js';

/** What the checks say of a look. */
export interface Verdict {
  readonly findings: readonly Finding[];
  readonly good: boolean;
}

/** A card as the display and the checks know it. */
export interface Shown {
  readonly lattice?: FlatLattice;
  /** The look, in the state that the lattice was computed of. */
  readonly of?: Card;
  /** Of a table: its file. */
  readonly file?: LutFile;
  readonly signals: Signals;
  readonly notes: readonly string[];
}

export interface Found extends Omit<Measurement, 'cloud' | 'points'> {
  /** Stills that tell nothing. */
  readonly unused: readonly UnusedStill[];
}

/** What the workers have found out; `undefined` while it is not known or not true any more. */
export interface Findings {
  readonly shown: Map<string, Shown>;
  readonly verdicts: Map<string, Verdict>;
  readonly thumbs: Map<string, Picture>;
  wedges?: readonly (readonly number[])[];
  scope?: Picture;
  clipping?: ClippingShares;
  measurement?: Found;
  /** Why there is no measurement. */
  measureProblem?: string;
  measuring: boolean;
  /** What is being waited for, in words; empty when nothing is. */
  busy: readonly string[];
}

export const noFindings = (): Findings => ({
  shown: new Map(),
  verdicts: new Map(),
  thumbs: new Map(),
  measuring: false,
  busy: [],
});

import type { SignalRange } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import type { Lut } from '../lattice.js';

/** What a check is given: the LUT, and what its code values stand for. */
export interface CheckContext {
  readonly lut: Lut;
  /** Code values r g b of the input -> XYZ of linear light, Y = 1 for the brightest the film can show. */
  readonly decodeInput: Run;
  /** Code values r g b of the output -> XYZ, Y = 1 for white. */
  readonly decodeOutput: Run;
  /** Grey input code of the light without film, where the look names it: no film is brighter. */
  readonly openGate?: number;
  /**
   * Code values r g b of what was grey, from dark to light, as the film shows it: where the look undoes fading, and recorded
   * greys were no greys.
   */
  readonly filmGreys?: Float64Array;
  /** The codes that the device after the LUT expects. */
  readonly range: SignalRange;
  /** The look itself, on code values: what the LUT is a table of. */
  readonly exact?: Run;
  /** Code values r g b r g b ... that the LUT is compared with the look on. */
  readonly samples?: Float64Array;
}

/** The answer to one question about a LUT. */
export interface Finding {
  /** Stable, for machines: small letters and hyphens. */
  readonly name: string;
  /** One plain sentence with figure and limit. */
  readonly sentence: string;
  readonly figure: number;
  readonly limit: number;
  /** Unit of figure and limit; empty for plain numbers. */
  readonly unit: string;
  readonly pass: boolean;
  /** A fault that does not pass makes the LUT not good; a note that does not pass is only worth knowing. */
  readonly severity: 'fault' | 'note';
}

/** One question about a LUT. */
export interface Check {
  readonly question: string;
  /** The answers; none where the question does not apply. */
  ask(context: CheckContext): readonly Finding[];
}

type Answer = Omit<Finding, 'pass'>;

/** A finding that passes up to its limit. What is not a number never passes. */
export const atMost = (answer: Answer): Finding => ({ ...answer, pass: answer.figure <= answer.limit });

/** A finding that passes from its limit up. */
export const atLeast = (answer: Answer): Finding => ({ ...answer, pass: answer.figure >= answer.limit });

/** A figure for a sentence: three digits, no zeros behind; 0 for what only rounding left over. */
export const shown = (figure: number): string =>
  String(Math.abs(figure) < 1e-9 ? 0 : Number(figure.toPrecision(3)));

/** A whole number for a sentence: from five digits on in groups of three, as ISO 80000-1 has them, and never broken over two lines. */
export const counted = (count: number): string =>
  count < 10_000 ? String(count) : String(count).replace(/\B(?=(\d{3})+$)/g, '\u00a0');

/** A share for a sentence, in percent; small ones are not rounded away. */
export const percent = (share: number): string => `${shown(100 * share)} %`;

export const channelNames = ['red', 'green', 'blue'] as const;

import { InvalidArgumentError, Option } from 'commander';
import { type MatrixName, matrices } from '../colour/luma-chroma.js';
import type { SignalRange } from '../colour/signal-range.js';
import { type Flip, flips } from '../picture/orientation.js';

/** A whole number within limits, for commander. */
export function wholeNumber(least: number, most: number) {
  return (text: string): number => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Allowed: whole numbers from ${least} to ${most}.`);
  };
}

export const forceOption = () =>
  new Option('--force', 'replace an existing file (a source never)').default(false);

export const jsonOption = () => new Option('--json', 'print the result as JSON').default(false);

export const flipOption = () =>
  new Option('--flip <how>', 'mirror the still first: h left-right, v top-bottom, hv both').choices(
    Object.keys(flips) as Flip[],
  );

/** What a command that takes stills asks about movie files among them. */
export interface ClipOptions {
  readonly matrix?: MatrixName;
  readonly range?: SignalRange;
}

export const matrixOption = () =>
  new Option('--matrix <name>', 'matrix of a movie file, over what its tags say').choices(
    Object.keys(matrices),
  );

export const rangeOption = () =>
  new Option('--range <name>', 'range of a movie file’s codes, over what its tags say').choices([
    'full',
    'legal',
  ]);

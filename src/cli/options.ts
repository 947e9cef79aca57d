import { Option } from 'commander';
import { type MatrixName, matrices } from '../colour/luma-chroma.js';
import type { SignalRange } from '../colour/signal-range.js';
import { InputError } from '../errors/input-error.js';
import { unknownName } from '../errors/unknown-name.js';
import { flips } from '../picture/orientation.js';

/** Refuses what an option was given, in the words of every other refusal. */
export function refuseOption(option: string, given: string, allowed: string, hint?: string): never {
  const shown = given.length > 60 ? `${given.slice(0, 57)}...` : given;
  throw new InputError({ field: option, what: `"${shown}" cannot be used`, allowed, hint });
}

/** A number as people write it, between limits where the option itself knows them. */
export function numberOption(option: string, least = -Infinity, most = Infinity) {
  const allowed = least === -Infinity ? 'a number' : `a number from ${least} to ${most}`;
  return (text: string): number => {
    const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text.trim()) ? Number(text) : NaN;
    if (value >= least && value <= most) return value;
    return refuseOption(
      option,
      text,
      allowed,
      text.includes(',') ? 'Write a point for the comma.' : undefined,
    );
  };
}

/** A whole number within limits. */
export function wholeNumber(option: string, least: number, most: number) {
  return (text: string): number => {
    const value = /^\d+$/.test(text.trim()) ? Number(text) : NaN;
    return value >= least && value <= most
      ? value
      : refuseOption(option, text, `a whole number from ${least} to ${most}`);
  };
}

/** One of a few names. */
export function nameAmong(option: string, names: readonly string[]) {
  return (text: string): string => {
    if (names.includes(text)) return text;
    throw new InputError(unknownName(option, text, names));
  };
}

/** An option that takes one of a few names; help, completion and man page show them. */
export function nameOption(flags: string, description: string, names: readonly string[]): Option {
  const option = new Option(flags, description).choices(names);
  return option.argParser(nameAmong(option.long!, names));
}

export const forceOption = () =>
  new Option('--force', 'replace an existing file (a source never)').default(false);

export const jsonOption = () => new Option('--json', 'print the result as JSON').default(false);

export const flipOption = () =>
  nameOption(
    '--flip <how>',
    'mirror the still first: h left-right, v top-bottom, hv both',
    Object.keys(flips),
  );

/** What a command that takes stills asks about movie files among them. */
export interface ClipOptions {
  readonly matrix?: MatrixName;
  readonly range?: SignalRange;
}

export const matrixOption = () =>
  nameOption('--matrix <name>', 'matrix of a movie file, over what its tags say', Object.keys(matrices));

export const rangeOption = () =>
  nameOption('--range <name>', 'range of a movie file’s codes, over what its tags say', ['full', 'legal']);

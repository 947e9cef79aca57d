import type { Option } from 'commander';
import type { Outline } from '../outline.js';

/** The spellings of an option: `-o --output`. */
export const spellings = ({ short, long }: Option): string[] =>
  [short, long].filter((flag) => flag !== undefined);

export const takesValue = ({ required, optional }: Option): boolean => required || optional;

/** What may follow an option; none where a file, a number or words are expected. */
export const choicesOf = ({ argChoices }: Option): readonly string[] => argChoices ?? [];

/** What may stand for a command's first argument, where that is one of a few words. */
export const firstChoices = ({ arguments: [first] }: Outline): readonly string[] => first?.argChoices ?? [];

/** The places of all commands, the program's own left out. */
export const placesOf = (outlines: readonly Outline[]): string[] =>
  outlines.map(({ place }) => place).filter((place) => place !== '');

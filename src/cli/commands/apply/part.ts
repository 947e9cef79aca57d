import { refuseOption } from '../../options.js';

/** A share of a reel: every `of`-th frame, the first of them the `which`-th. */
export interface Part {
  readonly which: number;
  readonly of: number;
}

/** Reads 3/10. @throws InputError for what is no part */
export function readPart(text: string): Part {
  const [, which, of] = /^(\d{1,9})\/(\d{1,9})$/.exec(text)?.map(Number) ?? [];
  if (which >= 1 && which <= of) return { which, of };
  return refuseOption('--part', text, '1/10 to 10/10 for a reel in ten parts, and the like');
}

/** The parts of a list have no item in common, and together all. */
export const partOf = <T>(items: readonly T[], { which, of }: Part): T[] =>
  items.filter((_, i) => i % of === which - 1);

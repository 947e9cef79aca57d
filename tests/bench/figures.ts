import { median, medianRatio } from './rounds.js';

/** One line of the table. */
export interface Figure {
  /** What is measured, in words. */
  readonly what: string;
  readonly ours: number;
  readonly unit: string;
  /** What it is compared with. */
  readonly beside?: {
    /** Where the ratio stands among `ratios`. */
    readonly key: string;
    readonly name: string;
    readonly theirs: number;
    /** Ours divided by theirs. */
    readonly ratio: number;
  };
  /** The target: the most that the ratio, or where there is none our own figure, should be. */
  readonly most?: number;
}

/** A figure of times taken in turns. @param scale what a second of `times` is in `unit` */
export function timedFigure(
  what: string,
  unit: string,
  scale: number,
  ours: readonly number[],
  most?: number,
): Figure {
  return { what, unit, ours: scale * median(ours), ...(most !== undefined && { most }) };
}

/** The same beside another's times. */
export function besideFigure(
  { what, unit, scale }: { readonly what: string; readonly unit: string; readonly scale: number },
  ours: readonly number[],
  beside: { readonly key: string; readonly name: string; readonly times: readonly number[] },
  most?: number,
): Figure {
  const { key, name, times } = beside;
  return {
    ...timedFigure(what, unit, scale, ours, most),
    beside: { key, name, theirs: scale * median(times), ratio: medianRatio(ours, times) },
  };
}

/** What a target is held against. */
export const heldAgainst = ({ ours, beside }: Figure): number => beside?.ratio ?? ours;

/** Whether a figure meets its target; undefined without one. */
export function isMet(figure: Figure): boolean | undefined {
  return figure.most === undefined ? undefined : heldAgainst(figure) <= figure.most;
}

/** A number with three significant digits, without an exponent. */
function shown(value: number): string {
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value) || 1)));
  return value.toFixed(Math.min(decimals, 6));
}

export const headings = ['figure', 'ours', 'beside it', 'ratio', 'target', ''] as const;

/** A figure as the words of its line. */
export function cells(figure: Figure): string[] {
  const { what, ours, unit, beside, most } = figure;
  const met = isMet(figure);
  return [
    what,
    `${shown(ours)} ${unit}`,
    beside === undefined ? '' : `${shown(beside.theirs)} ${unit}, ${beside.name}`,
    beside === undefined ? '' : shown(beside.ratio),
    most === undefined ? '' : `<= ${most}`,
    met === undefined ? '' : met ? 'met' : 'missed',
  ];
}

/** All ratios by their key. */
export function ratiosOf(figures: readonly Figure[]): Record<string, number> {
  return Object.fromEntries(
    figures.flatMap(({ beside }) => (beside === undefined ? [] : [[beside.key, beside.ratio]])),
  );
}

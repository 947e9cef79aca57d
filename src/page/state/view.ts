import type { MarkKind } from '../../measure/index.js';
import type { StationName } from '../stations/up-to.js';
import { wholePicture, type Viewport } from '../display/viewport.js';
import type { ScopeName } from '../worker/scope-names.js';
import type { Sheet } from './sheet.js';

/** How the picture is compared with the recording. */
export const comparisons = ['after', 'before', 'split', 'beside', 'looks'] as const;
export type Comparison = (typeof comparisons)[number];

/** What is looked at: no part of the document, but kept with it. */
export interface View {
  readonly station: StationName;
  /** The card that is shaped. */
  readonly card: string;
  readonly still?: string;
  readonly comparison: Comparison;
  /** Share of the picture's width left of which the split shows the recording. */
  readonly split: number;
  readonly marks: boolean;
  readonly scope: ScopeName;
  readonly viewport: Viewport;
  /** Points a side of the table that a look is checked and saved as. */
  readonly size: number;
  /** The kind of mark that is being drawn. */
  readonly marking?: MarkKind;
}

export const startView = (sheet: Sheet): View => ({
  station: 'stock',
  card: sheet.cards[0].id,
  comparison: 'after',
  split: 0.5,
  marks: true,
  scope: 'waveform',
  viewport: wholePicture,
  size: 33,
});

/** Whether the reel is being measured. Elsewhere the picture is judged, and no mark lies over it. */
export const isMeasuring = ({ cards }: Sheet, { station, card }: View): boolean =>
  station === 'stock' && cards.some(({ id, kind }) => id === card && kind === 'look');

/**
 * The view with everything it points at still there.
 * @param before what was looked at when the document last stood so, for what is gone
 */
export function viewWithin(sheet: Sheet, view: View, before?: View): View {
  const [card, still] = (['card', 'still'] as const).map((kind) => {
    const there = kind === 'card' ? sheet.cards : sheet.stills;
    const isThere = (id: string | undefined) => there.some((one) => one.id === id);
    return [view[kind], before?.[kind]].find(isThere) ?? there[0]?.id;
  });
  const comparison = view.comparison === 'looks' && sheet.cards.length < 2 ? 'after' : view.comparison;
  const next = { ...view, card: card!, still, comparison };
  return isMeasuring(sheet, next) ? next : { ...next, marking: undefined };
}

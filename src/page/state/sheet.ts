// The document of the page: what undo goes back through and what is kept. Plain data; knows no screen and no worker.
import type { Look } from '../../look/look-schema.js';
import { lookSchema } from '../../look/look-schema.js';
import { type MarkKind, markKinds } from '../../measure/index.js';
import { type Turn, upright } from './turn.js';

/** A look that is shaped here. */
export interface ShapedLook {
  readonly kind: 'look';
  readonly id: string;
  readonly look: Look;
}

/** A table read from a .cube file: it is looked at and checked, not shaped. Its bytes are kept with the stills. */
export interface TableLook {
  readonly kind: 'table';
  readonly id: string;
  readonly name: string;
}

export type Card = ShapedLook | TableLook;

export interface Still {
  readonly id: string;
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly bits: 8 | 16;
}

/** A rectangle of a still, in its stored pixels. */
export interface Mark {
  readonly id: string;
  readonly still: string;
  readonly kind: MarkKind;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Sheet {
  /** One to four. */
  readonly cards: readonly Card[];
  /** The reel's frames. */
  readonly stills: readonly Still[];
  readonly marks: readonly Mark[];
  /** How the reel lay in the gate. */
  readonly turn: Turn;
}

export const mostCards = 4;

export const newId = (): string => crypto.randomUUID();

export const plainLook = (name = 'New look'): Look => lookSchema.parse({ name });

export const shaped = (look: Look): ShapedLook => ({ kind: 'look', id: newId(), look });

export const emptySheet = (): Sheet => ({
  cards: [shaped(plainLook())],
  stills: [],
  marks: [],
  turn: upright,
});

export const cardName = (card: Card): string => (card.kind === 'look' ? card.look.name : card.name);

/** Marks as the measurement wants them: by kind, stills counted from 1. */
export function marksOf({ stills, marks }: Sheet) {
  const number = new Map(stills.map(({ id }, i) => [id, i + 1]));
  const rectangles = (kind: MarkKind) =>
    marks
      .filter((mark) => mark.kind === kind && number.has(mark.still))
      .map(({ still, x, y, width, height }) => ({ still: number.get(still)!, x, y, width, height }));
  return Object.fromEntries(markKinds.map((kind) => [kind, rectangles(kind)]));
}

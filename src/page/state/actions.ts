import { canonicalLook } from '../../look/canonical-look.js';
import type { Look } from '../../look/look-schema.js';
import type { Measurement } from '../../measure/index.js';
import { fieldsOf, type Station } from '../stations/station.js';
import { type FieldPath, withField, withoutFields } from './field.js';
import { type Card, cardName, type Mark, mostCards, newId, plainLook, shaped, type Sheet } from './sheet.js';
import type { Store } from './store.js';

/** The sheet with one of its cards changed. */
function withCard(sheet: Sheet, id: string, next: (look: Look) => Look): Sheet {
  return {
    ...sheet,
    cards: sheet.cards.map((card) =>
      card.id === id && card.kind === 'look' ? { ...card, look: next(card.look) } : card,
    ),
  };
}

export function setField(store: Store, path: FieldPath, value: unknown, label: string): void {
  const { card } = store.view;
  const gesture = `${card} ${path}`;
  store.change(label, (sheet) => withCard(sheet, card, (look) => withField(look, path, value)), gesture);
}

export function resetStation(store: Store, station: Station): void {
  const { card } = store.view;
  store.change(`reset of ${station.title.toLowerCase()}`, (sheet) =>
    withCard(sheet, card, (look) => withoutFields(look, fieldsOf(station))),
  );
}

export function rename(store: Store, name: string): void {
  const { card } = store.view;
  if (name.trim() === '') return;
  store.change('name', (sheet) =>
    withCard(sheet, card, (look) => ({ ...look, name: name.trim().slice(0, 200) })),
  );
}

/** Puts a card on the table; where four lie already, in the place of the one that is shaped. */
export function addCard(store: Store, card: Card): void {
  const { card: active } = store.view;
  store.change(`look “${cardName(card)}”`, (sheet) => ({
    ...sheet,
    cards:
      sheet.cards.length < mostCards
        ? [...sheet.cards, card]
        : sheet.cards.map((old) => (old.id === active ? card : old)),
  }));
  store.look({ card: card.id });
}

/** Puts a look in the place of the one that is shaped. */
export function replaceCard(store: Store, card: Card): void {
  const { card: active } = store.view;
  store.change(`look “${cardName(card)}”`, (sheet) => ({
    ...sheet,
    cards: sheet.cards.map((old) => (old.id === active ? card : old)),
  }));
  store.look({ card: card.id });
}

/** Whether a card is as it came, so that a look that is opened may take its place. */
export const isUntouched = (card: Card): boolean =>
  card.kind === 'look' && JSON.stringify(card.look) === JSON.stringify(plainLook());

export function openCard(store: Store, card: Card): void {
  if (isUntouched(store.card())) replaceCard(store, card);
  else addCard(store, card);
}

export function copyCard(store: Store): void {
  const card = store.card();
  if (card.kind === 'table') return;
  const name = `${card.look.name.replace(/ \(\d\)$/, '')} (${store.sheet().cards.length + 1})`;
  addCard(store, shaped({ ...card.look, name }));
}

/** What takes the place of one that goes: the next, or else the one before. */
function neighbour(all: readonly { readonly id: string }[], id: string): string | undefined {
  const at = all.findIndex((one) => one.id === id);
  return (all[at + 1] ?? all[at - 1])?.id;
}

export function removeCard(store: Store, id: string): void {
  const next = neighbour(store.sheet().cards, id);
  if (next === undefined) return;
  if (store.view.card === id) store.look({ card: next });
  store.change('removal of a look', (sheet) => ({
    ...sheet,
    cards: sheet.cards.filter((card) => card.id !== id),
  }));
}

/** Takes a still off the reel, and its marks with it. Its file stays kept, so that undo brings it back. */
export function removeStill(store: Store, id: string): void {
  const next = neighbour(store.sheet().stills, id);
  if (store.view.still === id && next !== undefined) store.look({ still: next });
  store.change('removal of a frame', (sheet) => ({
    ...sheet,
    stills: sheet.stills.filter((still) => still.id !== id),
    marks: sheet.marks.filter(({ still }) => still !== id),
  }));
}

export function addMark(store: Store, mark: Omit<Mark, 'id'>): string {
  const id = newId();
  store.change(`mark of ${mark.kind}`, (sheet) => ({ ...sheet, marks: [...sheet.marks, { ...mark, id }] }));
  return id;
}

export function changeMark(store: Store, id: string, next: Partial<Mark>): void {
  store.change(
    'place of a mark',
    (sheet) => ({
      ...sheet,
      marks: sheet.marks.map((mark) => (mark.id === id ? { ...mark, ...next } : mark)),
    }),
    `mark ${id}`,
  );
}

export function removeMark(store: Store, id: string): void {
  store.change('removal of a mark', (sheet) => ({
    ...sheet,
    marks: sheet.marks.filter((mark) => mark.id !== id),
  }));
}

/** Four decimals, as the command writes them. */
const rounded = <T extends object>(values: T): T =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, Number((value as number).toFixed(4)) + 0]),
  ) as T;

type Losses = Pick<Measurement, 'openGate' | 'flare' | 'dyes' | 'loss' | 'stain'>;

const withMeasurement = (look: Look, { openGate, flare, dyes, loss, stain }: Losses): Look => ({
  ...look,
  camera: { ...look.camera, openGate: Number(openGate.toPrecision(4)), flare: flare || undefined },
  stock: { dyes, loss: rounded(loss), stain: rounded(stain) },
});

/** Whether a look has what was measured. */
export const holdsMeasurement = (look: Look, measured: Losses): boolean =>
  canonicalLook(withMeasurement(look, measured)) === canonicalLook(look);

/** Takes what was measured into the look that is shaped: open gate, stray light and stock. */
export function takeMeasurement(store: Store, measured: Losses): void {
  const { card } = store.view;
  store.change('measured losses', (sheet) =>
    withCard(sheet, card, (look) => withMeasurement(look, measured)),
  );
}

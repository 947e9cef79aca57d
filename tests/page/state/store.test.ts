import { describe, expect, it } from 'vitest';
import {
  addCard,
  addMark,
  removeCard,
  removeStill,
  resetStation,
  setField,
} from '../../../src/page/state/actions.js';
import { plainLook, shaped, type Still } from '../../../src/page/state/sheet.js';
import { createStore, type Store } from '../../../src/page/state/store.js';
import { stations } from '../../../src/page/stations/index.js';

const still = (id: string): Still => ({ id, name: `${id}.png`, width: 64, height: 48, bits: 8 });

/** A table with the looks A, B and C and three stills. */
function laidTable(): Store {
  const store = createStore();
  const cards = ['A', 'B', 'C'].map((name) => shaped(plainLook(name)));
  store.change('a table', (sheet) => ({
    ...sheet,
    cards,
    stills: ['first', 'second', 'third'].map(still),
  }));
  return store;
}

const nameOf = (store: Store) => {
  const card = store.card();
  return card.kind === 'look' ? card.look.name : card.name;
};
const lookAt = (store: Store, name: string) =>
  store.look({
    card: store.sheet().cards.find((card) => card.kind === 'look' && card.look.name === name)!.id,
  });

describe('what is looked at', () => {
  it('is again the look that was shaped before, when adding one is undone', () => {
    const store = laidTable();
    lookAt(store, 'B');
    addCard(store, shaped(plainLook('D')));
    expect(nameOf(store)).toBe('D');
    store.undo();
    expect(nameOf(store)).toBe('B');
  });

  it('is the next look or still when one is taken off, and the one before after the last', () => {
    const store = laidTable();
    lookAt(store, 'B');
    removeCard(store, store.card().id);
    expect(nameOf(store)).toBe('C');
    removeCard(store, store.card().id);
    expect(nameOf(store)).toBe('A');
    store.look({ still: 'second' });
    removeStill(store, 'second');
    expect(store.view.still).toBe('third');
    removeStill(store, 'third');
    expect(store.view.still).toBe('first');
    removeStill(store, 'first');
    expect(store.view.still).toBeUndefined();
  });

  it('stays where it is when another look is taken off', () => {
    const store = laidTable();
    lookAt(store, 'C');
    removeCard(store, store.sheet().cards[0].id);
    expect(nameOf(store)).toBe('C');
  });
});

describe('the document', () => {
  it('loses the marks of a still with it, and undo brings both back', () => {
    const store = laidTable();
    for (const id of ['first', 'second'])
      addMark(store, { still: id, kind: 'black', x: 0, y: 0, width: 4, height: 4 });
    removeStill(store, 'first');
    expect(store.sheet().marks.map((mark) => mark.still)).toEqual(['second']);
    store.undo();
    expect(store.sheet().marks.map((mark) => mark.still)).toEqual(['first', 'second']);
  });

  it('gets no step of undo from what changes nothing, though it is told, so that fields show the value again', () => {
    const store = laidTable();
    setField(store, 'print.exposureStops', 1, 'exposure');
    const steps = store.history.past.length;
    let told = 0;
    store.watch(() => told++);
    setField(store, 'print.exposureStops', 1, 'exposure');
    resetStation(store, stations.lamp);
    expect(store.history.past.length).toBe(steps);
    expect(told).toBe(2);
    resetStation(store, stations.print);
    expect(store.history.past.length).toBe(steps + 1);
  });
});

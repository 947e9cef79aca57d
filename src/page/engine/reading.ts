import { coarseSize } from '../coarse.js';
import type { Card } from '../state/sheet.js';
import { type Hand, newestOnly } from '../worker/crew.js';
import { scopeSizes } from '../worker/scope-names.js';
import { nowAndThen } from './later.js';
import type { Workings } from './workings.js';

/** Sketches and scopes follow this often: the picture comes first. */
const sketchMs = 200;

/** Tells objects apart by a number each; 0 for none. */
function numbered() {
  const numbers = new WeakMap<object, number>();
  let seen = 0;
  return (one: object | undefined): number => {
    if (one === undefined) return 0;
    if (!numbers.has(one)) numbers.set(one, ++seen);
    return numbers.get(one)!;
  };
}

/** Reads off what is in sight: the scope, what is newly lost, and the wedges along the path. */
export function createReading({ store, findings, changed }: Workings, desk: Hand) {
  let [wedgeKey, scopeKey, clipKey] = ['', '', ''];
  const [sketchSoon, scopeSoon] = [nowAndThen(sketchMs), nowAndThen(sketchMs)];
  const tableNumber = numbered();

  const sketch = newestOnly(async (card: Card) => {
    if (card.kind !== 'look') return;
    findings.wedges = await desk.call('wedges', { look: card.look });
    changed();
  });

  const drawScope = newestOnly(async (key: string) => {
    const { still, scope, card, comparison } = store.view;
    if (still === undefined) return;
    const table = comparison === 'before' ? undefined : findings.shown.get(card)?.lattice;
    const how = { id: still, scope, lattice: table, ...scopeSizes[scope] };
    const picture = await desk.call('scope', how).catch(() => undefined);
    if (picture === undefined) return;
    findings.scope = picture;
    if (key === scopeKey) changed();
  });

  const countClipping = newestOnly(async (key: string) => {
    const { still, card } = store.view;
    const shown = findings.shown.get(card);
    if (still === undefined || shown?.lattice === undefined) return;
    const given = { id: still, lattice: shown.lattice, signals: shown.signals };
    const shares = await desk.call('clipping', given).catch(() => undefined);
    if (key !== clipKey) return;
    findings.clipping = shares;
    changed();
  });

  /** Scope and counts follow what the picture shows. */
  function followPicture(): void {
    const { still, scope, card, comparison } = store.view;
    const table = findings.shown.get(card)?.lattice;
    const state = `${still} ${card} ${table?.size} ${tableNumber(table)}`;
    const nextScope = `${state} ${scope} ${comparison === 'before'}`;
    if (still === undefined) findings.scope = findings.clipping = undefined;
    if (nextScope !== scopeKey) {
      scopeKey = nextScope;
      scopeSoon(() => drawScope(scopeKey));
    }
    if (state === clipKey) return;
    // What another still or table lost is not said of this one.
    findings.clipping = undefined;
    if (table?.size !== coarseSize) countClipping((clipKey = state));
  }

  function followLook(): void {
    const card = store.card();
    const key = card.kind === 'look' ? JSON.stringify(card.look) : '';
    if (key === wedgeKey) return;
    wedgeKey = key;
    findings.wedges = card.kind === 'look' ? findings.wedges : undefined;
    sketchSoon(() => sketch(store.card()));
  }

  return { followPicture, followLook };
}

import { InputError } from '../../errors/input-error.js';
import { sentences } from '../../errors/sentence.js';
import { signalsOf } from '../../jobs/signal.js';
import { coarseSize } from '../coarse.js';
import type { Sight } from '../display/sight.js';
import { type Card, marksOf } from '../state/sheet.js';
import type { Store } from '../state/store.js';
import { newestOnly, startHand } from '../worker/crew.js';
import { scopeSizes } from '../worker/scope-names.js';
import { type Findings, noFindings } from './findings.js';
import { computeLattice } from './lattices.js';
import { later, nowAndThen } from './later.js';

/** Points a side once a control rests. */
const restSize = 33;
const restMs = 140;
const checkMs = 500;
/** Sketches and scopes follow this often: the picture comes first. */
const sketchMs = 200;

export interface Engine {
  readonly findings: Findings;
  /** Looks at what changed in the document and asks the workers for what is wanted. */
  follow(): void;
  /**
   * Does something that takes a while, saying so.
   * @param tell takes the problem in words, and nothing when all went well: so a problem goes once the same is done well
   */
  whileBusy<Value>(
    words: string,
    work: () => Promise<Value>,
    tell?: (problem: string) => void,
  ): Promise<Value | undefined>;
  readonly desk: ReturnType<typeof startHand>;
  readonly judge: ReturnType<typeof startHand>;
  readonly measurer: ReturnType<typeof startHand>;
}

/** A problem in words: the user's, or a fault of ours said as one. */
export function problemWords(error: unknown): string {
  if (error instanceof InputError) return sentences(error);
  return `A fault of the page itself: ${error instanceof Error ? error.message : String(error)}.`;
}

/**
 * @param changed called when findings changed, to draw the page anew
 * @param redraw called when the picture must be drawn anew
 */
export function createEngine(store: Store, sight: Sight, changed: () => void, redraw: () => void): Engine {
  const findings = noFindings();
  const cores = Math.min(4, Math.max(2, navigator.hardwareConcurrency || 2));
  const hands = Array.from({ length: cores }, startHand);
  /** Stills, scopes and sketches; what takes longer: checks and exports, and the measurement. */
  const [desk, judge, measurer] = [startHand(), startHand(), startHand()];
  const asked = new Map<string, Card>();
  let shownStill: string | undefined;
  let [wedgeKey, scopeKey, clipKey, measureKey] = ['', '', '', ''];
  const whenResting = later(restMs);
  const whenStill = later(checkMs);
  const [sketchSoon, scopeSoon] = [nowAndThen(sketchMs), nowAndThen(sketchMs)];

  async function whileBusy<Value>(
    words: string,
    work: () => Promise<Value>,
    tell = (problem: string) => store.say('problem', words, problem),
  ): Promise<Value | undefined> {
    findings.busy = [...findings.busy, words];
    changed();
    try {
      const value = await work();
      tell('');
      return value;
    } catch (error) {
      tell(problemWords(error));
      return undefined;
    } finally {
      const at = findings.busy.indexOf(words);
      findings.busy = findings.busy.filter((_, i) => i !== at);
      changed();
    }
  }

  /** A problem of a background task that nobody waits for shows in the page, once. */
  function tellProblem(error: unknown): void {
    const words = problemWords(error);
    store.say('problem', words, words);
  }
  const quietly = (work: Promise<unknown>) => void work.catch(tellProblem);

  const isCurrent = (card: Card) => store.sheet().cards.includes(card);

  async function showLattice({ card, size }: { card: Card; size: number }): Promise<void> {
    if (card.kind !== 'look' || !isCurrent(card)) return;
    // While a control moves every coarse table is shown, or the picture would wait for the hand to rest.
    const isThere = () => store.sheet().cards.some(({ id }) => id === card.id);
    const isStale = () => (size === coarseSize ? !isThere() : !isCurrent(card));
    const lattice = await computeLattice(hands, card.look, size, isStale).catch(tellProblem);
    if (!lattice) return;
    const signals = signalsOf(card.look);
    findings.shown.set(card.id, { lattice, of: card, signals, notes: [] });
    sight.setTable(card.id, lattice, signals);
    redraw();
    followPicture();
    if (size === coarseSize) whenResting(refine);
    whenStill(judgeAll);
  }
  const lattices = new Map<string, (asked: { card: Card; size: number }) => void>();
  const lattice = (card: Card, size: number) => {
    if (!lattices.has(card.id)) lattices.set(card.id, newestOnly(showLattice));
    lattices.get(card.id)!({ card, size });
  };

  /** Fine tables for the looks that have coarse ones. */
  function refine(): void {
    for (const card of store.sheet().cards) {
      const shown = findings.shown.get(card.id);
      if (card.kind === 'look' && shown?.of === card && shown.lattice?.size === coarseSize)
        lattice(card, restSize);
    }
  }

  async function showTable(card: Card): Promise<void> {
    if (card.kind !== 'table' || findings.shown.has(card.id)) return;
    const { lut, shown, signals, notes } = await desk.call('readLut', { id: card.id, name: card.name });
    findings.shown.set(card.id, { lattice: shown, lut, signals, notes });
    sight.setTable(card.id, shown, signals);
    redraw();
    followPicture();
    whenStill(judgeAll);
  }

  function followCards(): void {
    const { cards } = store.sheet();
    for (const id of findings.shown.keys())
      if (!cards.some((card) => card.id === id)) {
        findings.shown.delete(id);
        asked.delete(id);
        sight.dropTable(id);
      }
    const fresh = cards.filter((card) => asked.get(card.id) !== card);
    for (const card of fresh) {
      asked.set(card.id, card);
      findings.verdicts.delete(card.id);
      if (card.kind === 'table') quietly(showTable(card));
      else lattice(card, coarseSize);
    }
  }

  const judgeOne = newestOnly(async (card: Card) => {
    if (!isCurrent(card) || findings.verdicts.has(card.id)) return;
    const shown = findings.shown.get(card.id);
    const verdict =
      card.kind === 'look'
        ? judge.call('checkLook', { look: card.look, signals: signalsOf(card.look) })
        : shown?.lut && judge.call('checkLut', { lut: shown.lut, signals: shown.signals });
    const said = await verdict?.catch(tellProblem);
    if (said && isCurrent(card)) findings.verdicts.set(card.id, said);
    changed();
    judgeAll();
  });

  /** The card that is shaped first, then the others. */
  function judgeAll(): void {
    const waiting = [store.card(), ...store.sheet().cards].find(({ id }) => !findings.verdicts.has(id));
    if (waiting !== undefined && (waiting.kind === 'look' || findings.shown.has(waiting.id)))
      judgeOne(waiting);
  }

  const showStill = newestOnly(async (id: string) => {
    if (id !== store.view.still) return;
    await whileBusy('Showing the still', async () => {
      const levels = await desk.call('showStill', { id, ...(await sight.wants) });
      if (id === store.view.still) await sight.setStill(levels);
    });
  });

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

  const measureReel = newestOnly(async () => {
    const sheet = store.sheet();
    const card = store.card();
    if (card.kind !== 'look' || sheet.stills.length === 0) return;
    findings.measuring = true;
    changed();
    const stills = sheet.stills.map(({ id, name }) => ({ id, name }));
    const { openGate, ...camera } = card.look.camera;
    const look = { ...card.look, camera, stock: undefined };
    const found = measurer.call('measure', { stills, marks: marksOf(sheet), dyes: 'auto', look });
    await found.then(
      (measurement) => Object.assign(findings, { measurement, measureProblem: undefined }),
      (error: unknown) =>
        Object.assign(findings, { measurement: undefined, measureProblem: problemWords(error) }),
    );
    findings.measuring = false;
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
    if (state !== clipKey && table?.size !== coarseSize) countClipping((clipKey = state));
  }

  const numbers = new WeakMap<object, number>();
  let tablesSeen = 0;
  function tableNumber(table: object | undefined): number {
    if (table === undefined) return 0;
    if (!numbers.has(table)) numbers.set(table, ++tablesSeen);
    return numbers.get(table)!;
  }

  function followStills(): void {
    const { still } = store.view;
    if (still !== shownStill) {
      shownStill = still;
      if (still !== undefined) showStill(still);
    }
    for (const { id } of store.sheet().stills)
      if (!findings.thumbs.has(id)) {
        findings.thumbs.set(id, undefined as never);
        quietly(desk.call('thumb', { id }).then((thumb) => (findings.thumbs.set(id, thumb), changed())));
      }
  }

  function followMeasuring(): void {
    const sheet = store.sheet();
    const card = store.card();
    if (card.kind !== 'look') return;
    const { encoding, primaries, range } = card.look.camera;
    const key = JSON.stringify([sheet.stills.map(({ id }) => id), sheet.marks, encoding, primaries, range]);
    if (key === measureKey) return;
    measureKey = key;
    if (sheet.stills.length > 0) measureReel(undefined);
    else findings.measurement = findings.measureProblem = undefined;
  }

  return {
    findings,
    whileBusy,
    desk,
    judge,
    measurer,
    follow: () => {
      followCards();
      followStills();
      followPicture();
      followMeasuring();
      const card = store.card();
      const key = card.kind === 'look' ? JSON.stringify(card.look) : '';
      if (key !== wedgeKey) {
        wedgeKey = key;
        findings.wedges = card.kind === 'look' ? findings.wedges : undefined;
        sketchSoon(() => sketch(store.card()));
      }
    },
  };
}

import { signalsOf } from '../../jobs/signal.js';
import { coarseSize } from '../coarse.js';
import type { Sight } from '../display/sight.js';
import type { Card } from '../state/sheet.js';
import type { Store } from '../state/store.js';
import { newestOnly, startHand } from '../worker/crew.js';
import { type Findings, noFindings } from './findings.js';
import { computeLattice } from './lattices.js';
import { createJudging } from './judging.js';
import { later } from './later.js';
import { createMeasuring } from './measuring.js';
import { createReading } from './reading.js';
import { problemWords, type Workings } from './workings.js';

/** Points a side once a control rests. */
const restSize = 33;
const restMs = 140;

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
  const whenResting = later(restMs);

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

  function tellProblem(error: unknown): void {
    const words = problemWords(error);
    store.say('problem', words, words);
  }
  const workings: Workings = { store, findings, changed, tellProblem };
  const judging = createJudging(workings, judge);
  const reading = createReading(workings, desk);
  const followMeasuring = createMeasuring(workings, measurer);
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
    reading.followPicture();
    if (size === coarseSize) whenResting(refine);
    judging.soon();
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
    const { file, shown, signals, notes } = await desk.call('readLut', { id: card.id, name: card.name });
    findings.shown.set(card.id, { lattice: shown, file, signals, notes });
    sight.setTable(card.id, shown, signals);
    redraw();
    reading.followPicture();
    judging.soon();
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

  const showStill = newestOnly(async (id: string) => {
    if (id !== store.view.still) return;
    await whileBusy('Showing the still', async () => {
      const levels = await desk.call('showStill', { id, ...(await sight.wants) });
      if (id === store.view.still) await sight.setStill(levels);
    });
  });

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

  return {
    findings,
    whileBusy,
    desk,
    judge,
    measurer,
    follow: () => {
      followCards();
      followStills();
      reading.followPicture();
      followMeasuring();
      reading.followLook();
      judging.followSize();
    },
  };
}

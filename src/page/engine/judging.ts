import type { Card } from '../state/sheet.js';
import { type Hand, newestOnly } from '../worker/crew.js';
import { later } from './later.js';
import type { Workings } from './workings.js';

const restMs = 500;

/** Has the checks of every look, as the file that would be saved, and of every table made, once nothing moves. */
export function createJudging({ store, findings, changed, tellProblem }: Workings, judge: Hand) {
  const whenStill = later(restMs);

  const judgeOne = newestOnly(async (card: Card) => {
    const { size } = store.view;
    const isCurrent = () => store.sheet().cards.includes(card) && store.view.size === size;
    if (!isCurrent() || findings.verdicts.has(card.id)) return;
    const shown = findings.shown.get(card.id);
    const verdict =
      card.kind === 'look'
        ? judge.call('checkLook', { look: card.look, size })
        : shown?.file && judge.call('checkFile', { file: shown.file });
    const said = await verdict?.catch(tellProblem);
    if (said && isCurrent()) findings.verdicts.set(card.id, said);
    changed();
    judgeAll();
  });

  /** The card that is shaped first, then the others. */
  function judgeAll(): void {
    const waiting = [store.card(), ...store.sheet().cards].find(({ id }) => !findings.verdicts.has(id));
    if (waiting !== undefined && (waiting.kind === 'look' || findings.shown.has(waiting.id)))
      judgeOne(waiting);
  }

  let judgedSize = store.view.size;
  /** Another size makes another file of every look. */
  function followSize(): void {
    if (store.view.size === judgedSize) return;
    judgedSize = store.view.size;
    for (const { id, kind } of store.sheet().cards) if (kind === 'look') findings.verdicts.delete(id);
    judgeAll();
  }

  return { soon: () => whenStill(judgeAll), followSize };
}

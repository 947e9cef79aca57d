import type { History } from './history.js';
import { checkLook } from '../../look/read-look.js';
import { type Card, newId, type Sheet } from './sheet.js';
import { startView, type View } from './view.js';

/** What is kept of a visit. */
export interface Kept {
  readonly history: History<Sheet>;
  readonly view: View;
}

const prefix = 'gatelight-sheet-';
const ownKey = 'gatelight-own-sheet';
/** Steps of undo that outlive a reload, and sheets that are kept at all. */
const keptSteps = 40;
const keptSheets = 6;

interface Stored extends Kept {
  readonly at: number;
}

/** Browsers refuse storage to private windows and full disks: then nothing is kept, and nothing breaks. */
function quietly<Value>(work: () => Value): Value | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}

function requireCard(card: Card): Card {
  return card.kind === 'look' ? { ...card, look: checkLook(card.look, 'kept look') } : card;
}

const requireSheet = (sheet: Sheet): Sheet => ({ ...sheet, cards: sheet.cards.map(requireCard) });

/** What is kept under a name; undefined when there is nothing, or another version wrote it. */
export function readKept(id: string): Stored | undefined {
  return quietly(() => {
    const text = localStorage.getItem(prefix + id);
    if (text === null) return undefined;
    const { history, view, at } = JSON.parse(text) as Stored;
    const now = requireSheet(history.now);
    return { at, history: { ...history, now }, view: { ...startView(now), ...view, marking: undefined } };
  });
}

const keptIds = (): string[] => Object.keys(localStorage).filter((key) => key.startsWith(prefix));

const newestFirst = () =>
  (quietly(keptIds) ?? [])
    .map((key) => key.slice(prefix.length))
    .map((id) => ({ id, at: readKept(id)?.at ?? 0 }))
    .sort((a, b) => b.at - a.at);

/** @returns whether it could be kept */
export function keep(id: string, { history, view }: Kept): boolean {
  const { past, now, future } = history;
  const kept = { past: past.slice(-keptSteps), now, future: future.slice(0, keptSteps) };
  const text = JSON.stringify({ at: Date.now(), history: kept, view });
  return quietly(() => (localStorage.setItem(prefix + id, text), true)) ?? false;
}

/** Takes a sheet for this tab as long as it is open. @param waitMs how long to wait for another tab to give it up */
async function claimed(id: string, waitMs: number): Promise<boolean> {
  const { locks } = navigator as { locks?: LockManager };
  if (locks === undefined) return true;
  const how: LockOptions = waitMs > 0 ? { signal: AbortSignal.timeout(waitMs) } : { ifAvailable: true };
  return new Promise((done) => {
    locks
      .request(prefix + id, how, (lock) => {
        done(lock !== null);
        return lock === null ? undefined : new Promise(() => {});
      })
      .catch(() => done(false));
  });
}

/** A reloaded page asks before the old one has quite gone. */
const reloadMs = 500;

/**
 * The sheet of this tab: its own after a reload; else the newest, where no other tab is open; else a new one. Two tabs
 * never write the same sheet.
 */
export async function ownSheet(): Promise<string> {
  const own = quietly(() => sessionStorage.getItem(ownKey)) ?? undefined;
  const id = (own !== undefined && (await claimed(own, reloadMs)) ? own : undefined) ?? (await freeSheet());
  quietly(() => sessionStorage.setItem(ownKey, id));
  return id;
}

async function freeSheet(): Promise<string> {
  const { locks } = navigator as { locks?: LockManager };
  const held = (await locks?.query())?.held ?? [];
  const othersOpen = held.some(({ name }) => name?.startsWith(prefix));
  const [newest] = othersOpen ? [] : newestFirst();
  if (newest !== undefined && (await claimed(newest.id, 0))) return newest.id;
  const id = newId();
  await claimed(id, 0);
  return id;
}

/** Gives up a sheet that no tab has open. */
async function giveUp(id: string): Promise<void> {
  await navigator.locks.request(prefix + id, { ifAvailable: true }, (lock) => {
    if (lock !== null) localStorage.removeItem(prefix + id);
  });
}

/**
 * Gives up the oldest sheets, and tells which files nobody can ask for any more: no kept sheet names them, nor any step
 * of this one. Another tab may hold more than is kept of it, so nothing is given up while one is open.
 * @param own the sheet of this tab
 * @param files names of kept files, listed after this tab took its sheet: what tabs opened since then bring is not among them
 */
export async function tidy(
  own: string,
  history: History<Sheet>,
  files: readonly string[],
): Promise<string[]> {
  try {
    const { held = [] } = await navigator.locks.query();
    if (held.some(({ name }) => name?.startsWith(prefix) && name !== prefix + own)) return [];
    const others = newestFirst().filter(({ id }) => id !== own);
    for (const { id } of others.slice(keptSheets - 1)) await giveUp(id);
    const texts = keptIds().map((key) => localStorage.getItem(key) ?? '');
    const named = [JSON.stringify(history), ...texts].join();
    return files.filter((id) => !named.includes(id));
  } catch {
    return [];
  }
}

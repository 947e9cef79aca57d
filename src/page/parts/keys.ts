import type { Page } from './parts.js';
import { panBy, zoomBy, zoomToPixels, zoomToWhole } from './glass.js';

/** Canvas pixels that an arrow key moves the picture, and the factor of a zoom step. */
export const panStep = 60;
export const zoomStep = 1.25;

/** Shows the recording as long as something is held. */
export function hold(page: Page, held: boolean): void {
  if (page.dialogs.holding === held) return;
  page.dialogs.holding = held;
  page.changed();
}

const moves: Readonly<Record<string, readonly [dx: number, dy: number]>> = {
  ArrowLeft: [panStep, 0],
  ArrowRight: [-panStep, 0],
  ArrowUp: [0, panStep],
  ArrowDown: [0, -panStep],
};

/** Keys while the picture has the focus; nowhere else, so that no single key does anything unasked. */
export function pictureKey(page: Page, event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const { store } = page;
  const acts: Readonly<Record<string, () => void>> = {
    '+': () => zoomBy(page, zoomStep),
    '=': () => zoomBy(page, zoomStep),
    '-': () => zoomBy(page, 1 / zoomStep),
    '0': () => zoomToWhole(page),
    '1': () => zoomToPixels(page),
    o: () => hold(page, true),
    m: () => store.look({ marks: !store.view.marks }),
  };
  const move = moves[event.key];
  const act = move === undefined ? acts[event.key] : () => panBy(page, ...move);
  if (act === undefined) return;
  event.preventDefault();
  act();
}

export function pictureKeyUp(page: Page, event: KeyboardEvent): void {
  if (event.key === 'o') hold(page, false);
}

/** Undo and redo, as everywhere; text fields keep their own while they are typed in. Escape gives up a mark. */
export function pageKey(page: Page, event: KeyboardEvent): void {
  if (event.key === 'Escape' && page.store.view.marking !== undefined)
    page.store.look({ marking: undefined });
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const target = event.target as Element | null;
  if (target instanceof HTMLInputElement && ['text', 'number'].includes(target.type)) return;
  const key = event.key.toLowerCase();
  if (key !== 'z' && key !== 'y') return;
  event.preventDefault();
  if (key === 'y' || event.shiftKey) page.store.redo();
  else page.store.undo();
}

// The page: the whole job in a browser. Knows document, screen and workers; does no computation of its own.
import './quiet-schema.js';
import { render } from 'lit-html';
import { openSight } from './display/sight.js';
import { createEngine, type Engine } from './engine/engine.js';
import { openFiles } from './files.js';
import { glassEvents, stillOf } from './parts/glass.js';
import { pageKey } from './parts/keys.js';
import type { Dialogs, Page } from './parts/parts.js';
import { layout } from './parts/tiles.js';
import { whole } from './parts/whole.js';
import { keep, ownSheet, readKept, tidy } from './state/keeping.js';
import { createStore, type Store } from './state/store.js';

/** Does something once before the next frame, however often it is asked. */
function oncePerFrame(work: () => void): () => void {
  let asked = false;
  return () => {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      work();
    });
  };
}

function watchDrops(page: Page): void {
  const { documentElement } = document;
  const over = (on: boolean) => documentElement.classList.toggle('dropping', on);
  addEventListener('dragover', (event) => {
    event.preventDefault();
    over(true);
  });
  addEventListener('dragleave', (event) => over(event.relatedTarget !== null));
  addEventListener('drop', (event) => {
    event.preventDefault();
    over(false);
    void openFiles(page, [...(event.dataTransfer?.files ?? [])]);
  });
}

/** Keeps the sheet a moment after a change, and when the page goes. */
function watchKeeping(store: Store, id: string): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const now = () => void keep(id, { history: store.history, view: store.view });
  store.watch(() => {
    clearTimeout(timer);
    timer = setTimeout(now, 250);
  });
  addEventListener('pagehide', now);
  addEventListener('visibilitychange', now);
}

/** Gives up the files of stills and tables that no undo brings back. */
async function giveUpFiles({ engine, store }: Page, sheet: string): Promise<void> {
  // Asked before anything can be opened here: this worker does one thing after the other.
  const files = await engine.desk.call('storedNames', {});
  for (const id of await tidy(sheet, store.history, files)) await engine.desk.call('dropStill', { id });
}

function start(store: Store, root: HTMLElement): Page {
  const dialogs: Dialogs = { plain: false, title: '', holding: false };
  const sight = openSight(new URLSearchParams(location.search).has('plain'), (points) => {
    // What tests and the bench wait for: how fine the table is that was drawn last, and how often something was drawn.
    const { dataset } = sight.element;
    Object.assign(dataset, { points, drawn: Number(dataset.drawn ?? 0) + 1 });
  });

  /** Counts the tables that were shown. */
  let tables = 0;
  let drawn = '';
  /** Draws the picture where anything of it differs from what was drawn last. */
  function draw(): void {
    const still = stillOf(page);
    const scene = still && layout(store.sheet(), store.view, still, sight, dialogs.holding).scene;
    const wanted = scene ?? { turn: store.sheet().turn, tiles: [], bed: 0.22 };
    const key = JSON.stringify([tables, wanted, sight.width, sight.height]);
    if (key === drawn) return;
    drawn = key;
    sight.draw(wanted, engine.findings.shown.get(store.view.card)?.lattice?.size ?? 0);
  }
  const redraw = () => {
    tables++;
    draw();
  };
  const changed = oncePerFrame(() => {
    render(whole(page, glass), root);
    fitCanvas();
    draw();
  });

  /** The canvas has the pixels of the place it fills. */
  function fitCanvas(): void {
    const { clientWidth, clientHeight } = sight.element.parentElement!;
    const scale = Math.min(2, devicePixelRatio || 1);
    const [width, height] = [clientWidth, clientHeight].map((side) => Math.max(1, Math.round(side * scale)));
    if (width === sight.width && height === sight.height) return;
    sight.resize(width, height);
    changed();
  }

  const engine: Engine = createEngine(store, sight, changed, redraw);
  const page: Page = { store, findings: engine.findings, engine, sight, dialogs, changed };
  const glass = glassEvents(page);
  store.watch(() => {
    engine.follow();
    changed();
  });
  addEventListener('keydown', (event) => pageKey(page, event));
  render(whole(page, glass), root);
  new ResizeObserver(fitCanvas).observe(sight.element.parentElement!);
  fitCanvas();
  engine.follow();
  return page;
}

async function main(): Promise<void> {
  const root = document.getElementById('table')!;
  const id = await ownSheet();
  const store = createStore(readKept(id));
  root.replaceChildren();
  watchKeeping(store, id);
  const page = start(store, root);
  watchDrops(page);
  await giveUpFiles(page, id);
}

void main();

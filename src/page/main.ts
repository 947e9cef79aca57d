// The page: the whole job in a browser. Knows document, screen and workers; does no computation of its own.
import './quiet-schema.js';
import { render } from 'lit-html';
import { glDisplay } from './display/gl-display.js';
import { plainDisplay } from './display/plain-display.js';
import { createEngine, type Engine } from './engine/engine.js';
import { openFiles } from './files.js';
import { glassEvents, stillOf } from './parts/glass.js';
import { pageKey } from './parts/keys.js';
import type { Dialogs, Page } from './parts/parts.js';
import { layout } from './parts/tiles.js';
import { whole } from './parts/whole.js';
import { keep, ownSheet, readKept } from './state/keeping.js';
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

/** The display that this browser can do; `?plain` asks for the one without graphics. */
function chooseDisplay(canvas: HTMLCanvasElement) {
  const asked = new URLSearchParams(location.search).has('plain');
  return (asked ? undefined : glDisplay(canvas)) ?? plainDisplay(canvas);
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

function start(store: Store, root: HTMLElement): Page {
  const canvas = Object.assign(document.createElement('canvas'), { className: 'sight' });
  const display = chooseDisplay(canvas);
  const dialogs: Dialogs = { size: 33, plain: false, title: '', holding: false };

  /** Counts what the display holds: tables, stills, size. */
  let content = 0;
  let drawn = '';
  /** Draws the picture where anything of it differs from what was drawn last. */
  function drawNow(): void {
    const still = stillOf(page);
    const scene = still && layout(store.sheet(), store.view, still, canvas, dialogs.holding).scene;
    const wanted = scene ?? { turn: store.sheet().turn, tiles: [], bed: 0.22 };
    const key = `${content} ${JSON.stringify(wanted)}`;
    if (key === drawn) return;
    drawn = key;
    display.draw(wanted);
    // What tests and the bench wait for: how fine the table is that was drawn last, and how often something was drawn.
    canvas.dataset.points = String(engine.findings.shown.get(store.view.card)?.lattice?.size ?? 0);
    canvas.dataset.drawn = String(Number(canvas.dataset.drawn ?? 0) + 1);
  }
  const renderNow = () => render(whole(page, glass), root);
  const drawSoon = oncePerFrame(drawNow);
  const redraw = () => {
    content++;
    drawSoon();
  };
  const changed = oncePerFrame(() => {
    renderNow();
    fitCanvas();
    drawNow();
  });

  /** The canvas has the pixels of the place it fills. */
  function fitCanvas(): void {
    const { clientWidth, clientHeight } = canvas.parentElement ?? canvas;
    const scale = Math.min(2, devicePixelRatio || 1);
    const [width, height] = [Math.round(clientWidth * scale), Math.round(clientHeight * scale)];
    if (width === canvas.width && height === canvas.height) return;
    display.resize(Math.max(1, width), Math.max(1, height));
    content++;
    changed();
  }

  const engine: Engine = createEngine(store, display, changed, redraw);
  const page: Page = { store, findings: engine.findings, engine, display, canvas, dialogs, redraw, changed };
  const glass = glassEvents(page);
  store.watch(() => {
    engine.follow();
    changed();
  });
  addEventListener('keydown', (event) => pageKey(page, event));
  renderNow();
  new ResizeObserver(fitCanvas).observe(canvas.parentElement!);
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
  watchDrops(start(store, root));
}

void main();

import type { Signals } from '../../jobs/signal.js';
import type { Box, Display, Scene } from '../display/display.js';
import { glDisplay } from '../display/gl-display.js';
import { plainDisplay } from '../display/plain-display.js';
import { applyEngine } from './apply-engine.js';
import type { Level } from './levels.js';
import { coarseSize } from '../coarse.js';
import type { FlatLattice } from './tasks.js';

/** What a worker that shows the picture is told. */
export type Show =
  | { readonly show: 'open'; readonly canvas: OffscreenCanvas; readonly plain: boolean }
  | { readonly show: 'still'; readonly levels: readonly Level[] }
  | {
      readonly show: 'table';
      readonly slot: string;
      readonly lattice: FlatLattice;
      readonly signals: Signals;
    }
  | { readonly show: 'drop'; readonly slot: string }
  | {
      readonly show: 'scene';
      readonly scene: Scene;
      readonly size: readonly [number, number];
      readonly points: number;
    };

/** What it answers. */
export type Shown =
  | { readonly shown: 'open'; readonly wants: Display['wants'] }
  | { readonly shown: 'still' }
  /** The picture stands on the canvas; `points` as the scene said. */
  | { readonly shown: 'scene'; readonly points: number };

/** Where a drawing takes longer than this, the pictures of a moving control are drawn with half the pixels each way. */
const slowMs = 30;

/** A scene on a canvas of other size. */
function scaled(scene: Scene, factor: number): Scene {
  const box = ({ x, y, width, height }: Box): Box => ({
    x: Math.round(x * factor),
    y: Math.round(y * factor),
    width: Math.round(width * factor),
    height: Math.round(height * factor),
  });
  const tiles = scene.tiles.map((tile) => ({
    ...tile,
    box: box(tile.box),
    picture: box(tile.picture),
    ...(tile.splitX === undefined ? {} : { splitX: Math.round(tile.splitX * factor) }),
  }));
  return { ...scene, tiles };
}

/**
 * Shows the picture on the canvas that it is given, so that the page never waits for a drawing.
 * @param answer takes what there is to say
 */
export function showing(answer: (shown: Shown) => void): (asked: Show) => void {
  let canvas: OffscreenCanvas;
  let display: Display;
  let last: Extract<Show, { show: 'scene' }> | undefined;
  let isDue = false;
  let isSlow = false;

  function draw(): void {
    isDue = false;
    if (last === undefined) return;
    const { scene, size, points } = last;
    const factor = isSlow && points <= coarseSize ? 0.5 : 1;
    const [width, height] = size.map((side) => Math.ceil(side * factor));
    const start = performance.now();
    if (canvas.width !== width || canvas.height !== height) display.resize(width, height);
    display.draw(factor === 1 ? scene : scaled(scene, factor));
    // The canvas is handed over when the frame ends: a task of its own comes after that.
    setTimeout(() => {
      if (factor === 1) isSlow = performance.now() - start > slowMs;
      answer({ shown: 'scene', points });
    });
  }

  /** Once a frame, however often it is asked: the newest scene. */
  function drawSoon(): void {
    if (!isDue) requestAnimationFrame(draw);
    isDue = true;
  }

  return (asked) => {
    if (asked.show === 'open') {
      ({ canvas } = asked);
      display = (asked.plain ? undefined : glDisplay(canvas)) ?? plainDisplay(canvas, applyEngine);
      answer({ shown: 'open', wants: display.wants });
    } else if (asked.show === 'still') {
      void display.setStill(asked.levels, drawSoon).then(() => answer({ shown: 'still' }));
    } else if (asked.show === 'table') display.setTable(asked.slot, asked.lattice, asked.signals);
    else if (asked.show === 'drop') display.dropTable(asked.slot);
    else {
      last = asked;
      drawSoon();
    }
  };
}

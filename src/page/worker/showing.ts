import type { Signals } from '../../jobs/signal.js';
import type { Display, Scene } from '../display/display.js';
import { glDisplay } from '../display/gl-display.js';
import { plainDisplay } from '../display/plain-display.js';
import type { Level } from './levels.js';
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

/**
 * Shows the picture on the canvas that it is given, so that the page never waits for a drawing.
 * @param answer takes what there is to say
 */
export function showing(answer: (shown: Shown) => void): (asked: Show) => void {
  let canvas: OffscreenCanvas;
  let display: Display;
  let last: Extract<Show, { show: 'scene' }> | undefined;
  let isDue = false;

  function draw(): void {
    isDue = false;
    if (last === undefined) return;
    const { scene, size, points } = last;
    if (canvas.width !== size[0] || canvas.height !== size[1]) display.resize(...size);
    display.draw(scene);
    // The canvas is handed over when the frame ends: a task of its own comes after that.
    setTimeout(() => answer({ shown: 'scene', points }));
  }

  /** Once a frame, however often it is asked: the newest scene. */
  function drawSoon(): void {
    if (!isDue) requestAnimationFrame(draw);
    isDue = true;
  }

  return (asked) => {
    if (asked.show === 'open') {
      ({ canvas } = asked);
      display = (asked.plain ? undefined : glDisplay(canvas)) ?? plainDisplay(canvas);
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

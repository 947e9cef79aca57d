import type { Signals } from '../../jobs/signal.js';
import { newWorker } from '../worker/crew.js';
import type { Level } from '../worker/levels.js';
import type { Show, Shown } from '../worker/showing.js';
import type { FlatLattice } from '../worker/tasks.js';
import type { Display, Scene } from './display.js';

/** The picture's place in the page: its canvas, drawn by a worker, and that canvas's size in pixels. */
export interface Sight {
  readonly element: HTMLCanvasElement;
  readonly width: number;
  readonly height: number;
  /** What the display can take, once it is known. */
  readonly wants: Promise<Display['wants']>;
  /** Hands a still over; its levels are gone here. @returns when all of it is there */
  setStill(levels: readonly Level[]): Promise<void>;
  setTable(slot: string, lattice: FlatLattice, signals: Signals): void;
  dropTable(slot: string): void;
  /** The canvas gets this many pixels with the next scene. */
  resize(width: number, height: number): void;
  /** @param points how fine the table is that it shows: told back when it is drawn */
  draw(scene: Scene, points: number): void;
}

/**
 * @param plain asks for the display without graphics
 * @param drawn told of every picture that stands on the canvas
 */
export function openSight(plain: boolean, drawn: (points: number) => void): Sight {
  const element = Object.assign(document.createElement('canvas'), { className: 'sight' });
  const worker = newWorker();
  const tell = (asked: Show, transfer: Transferable[] = []) => worker.postMessage(asked, transfer);
  let size: readonly [number, number] = [1, 1];
  let stillShown: (() => void) | undefined;
  let opened: (wants: Display['wants']) => void;
  const wants = new Promise<Display['wants']>((done) => (opened = done));

  worker.onmessage = ({ data }: MessageEvent<Shown>) => {
    if (data.shown === 'open') opened(data.wants);
    else if (data.shown === 'still') stillShown?.();
    else drawn(data.points);
  };
  const canvas = element.transferControlToOffscreen();
  tell({ show: 'open', canvas, plain }, [canvas]);

  return {
    element,
    get width() {
      return size[0];
    },
    get height() {
      return size[1];
    },
    wants,
    setStill: (levels) => {
      tell(
        { show: 'still', levels },
        levels.map(({ data }) => data.buffer),
      );
      return new Promise((done) => (stillShown = done));
    },
    setTable: (slot, lattice, signals) => tell({ show: 'table', slot, lattice, signals }),
    dropTable: (slot) => tell({ show: 'drop', slot }),
    resize: (width, height) => (size = [width, height]),
    draw: (scene, points) => tell({ show: 'scene', scene, size, points }),
  };
}

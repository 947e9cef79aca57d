// The picture's display: pictures and tables in, pixels on a canvas out. Knows code values and screens; it must not know
// what a look is made of, nor the page around the canvas.
import type { Box } from '../../picture/canvas.js';
import type { Signals } from '../../jobs/signal.js';
import type { Turn } from '../state/turn.js';
import type { Level } from '../worker/levels.js';
import type { FlatLattice } from '../worker/tasks.js';

export type { Box } from '../../picture/canvas.js';

/** One picture on the canvas. */
export interface Tile {
  /** Nothing is drawn outside, canvas pixels from the top left. */
  readonly box: Box;
  /** Where the whole picture, as seen, would lie. */
  readonly picture: Box;
  /** The table it is seen through, which also says how the recording was written. */
  readonly slot: string;
  /** Whether the recording itself is shown, and not what the table makes of it. */
  readonly isRecording: boolean;
  /** Left of this canvas x the recording is shown. */
  readonly splitX?: number;
  readonly marks: boolean;
}

export interface Scene {
  readonly turn: Turn;
  readonly tiles: readonly Tile[];
  /** Grey of the bed, 0..1 code value. */
  readonly bed: number;
}

export interface Display {
  /** What it works with, for the page's notes. */
  readonly kind: 'graphics' | 'plain';
  /** Wanted as half floats at 16 bits, and no larger than this along a side. */
  readonly wants: { readonly halfFloats: boolean; readonly most: number };
  /** Loads a still, smallest level first, so that something is seen at once. @returns when all of it is there */
  setStill(levels: readonly Level[], progress: () => void): Promise<void>;
  setTable(slot: string, lattice: FlatLattice, signals: Signals): void;
  dropTable(slot: string): void;
  resize(width: number, height: number): void;
  draw(scene: Scene): void;
}

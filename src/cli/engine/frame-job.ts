import type { SignalRange } from '../../colour/signal-range.js';
import type { Lut } from '../../lut/lattice.js';
import type { Flip } from '../../picture/orientation.js';
import type { FrameCoding } from '../../picture/planar-codec.js';

/** What a thread is to do with every frame; told once, when it starts. */
export interface FrameWork {
  readonly lut: Lut;
  /** How frames come, and how they go. */
  readonly from: FrameCoding;
  readonly to: FrameCoding;
  /** Range of the red, green and blue that the LUT takes and gives. */
  readonly takes: SignalRange;
  readonly gives: SignalRange;
  readonly flip: Flip | undefined;
}

/** One frame: bytes shared with the thread. */
export interface FrameJob {
  readonly source: Uint8Array;
  readonly target: Uint8Array;
}

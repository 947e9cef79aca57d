import type { PreparedRun } from '../../lut/engine/run-area.js';
import type { WasmMemory } from '../../maths/web-assembly.js';
import type { Lut } from '../../lut/lattice.js';
import type { FrameWay } from '../../picture/lines/frame-through.js';

/** What a thread is to do with every frame; told once, when it starts. */
export interface FrameWork {
  readonly lut: Lut;
  readonly way: FrameWay;
}

/** The compiled loops and where a thread finds its own in the memory that all share. */
export interface FrameLoops {
  /** The engine's loops, with the LUT prepared in memory, and those over lines. */
  readonly engine: object;
  readonly lines: object;
  readonly memory: WasmMemory;
  readonly run: PreparedRun;
  /** Where memory is the thread's own, to work in. */
  readonly start: number;
}

/** What a thread gets when it starts. */
export interface FrameStart {
  readonly work: FrameWork;
  /** Undefined where they cannot be had, or do not do this LUT: then the plain way is gone. */
  readonly loops: FrameLoops | undefined;
}

/** One frame: bytes shared with the thread; with loops, parts of their memory. */
export interface FrameJob {
  readonly source: Uint8Array;
  readonly target: Uint8Array;
}

import type { Samples } from '../../lut/apply-codes.js';
import type { PreparedRun } from '../../lut/engine/run-area.js';
import type { WasmMemory } from '../../maths/web-assembly.js';

/** What a thread gets when it starts. */
export interface ThreadStart {
  readonly module: object;
  readonly memory: WasmMemory;
}

/** A picture to be done by several threads, band by band: each takes the next one that is left. */
export interface BandJob {
  /** Its area is the thread's own. */
  readonly run: PreparedRun;
  /** Shared between the threads, as is `next`. */
  readonly source: Samples;
  readonly target: Samples;
  readonly channels: 3 | 4;
  /** One number: the band that nobody has taken yet. */
  readonly next: Int32Array;
}

/** Pixels of a band: enough that taking one costs nothing, few enough that all threads end together. */
export const bandPixels = 65536;

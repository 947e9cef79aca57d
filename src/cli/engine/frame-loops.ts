import { latticeKeeper } from '../../lut/engine/keep-lattice.js';
import { areaBytes } from '../../lut/engine/run-area.js';
import { growTo, type SimdModule } from '../../lut/engine/simd-module.js';
import { instantiate } from '../../maths/web-assembly.js';
import { frameWorkBytes } from '../../picture/lines/frame-through.js';
import type { LineModule } from '../../picture/lines/line-module.js';
import { planeBytes } from '../../picture/planes.js';
import type { FrameLoops, FrameWork } from './frame-job.js';
import type { FrameSlot } from './frame-pool.js';
import { loadLines, loadShared } from './load-engine.js';

/** The compiled loops, ready for a movie's frames: one for each thread, and the places that frames wait in. */
export interface PreparedLoops {
  readonly loops: readonly FrameLoops[];
  readonly slots: readonly FrameSlot[];
}

/** Room behind each part of memory, for what is read there and means nothing; a multiple of 16. */
const roomBehind = 256;

/**
 * Lays everything out in one memory that the threads share: the LUT, what each works in, and the frames.
 * @returns undefined where the loops cannot be had, do not do this LUT, or memory is too small
 */
export function prepareLoops(
  threads: number,
  slots: number,
  { lut, way }: FrameWork,
): PreparedLoops | undefined {
  const [shared, lines] = [loadShared(), loadLines()];
  if (shared === undefined || lines === undefined) return undefined;
  const { module: engine, memory } = shared;
  const lattice = instantiate<SimdModule>(engine, memory);
  const codes = new Uint16Array();
  try {
    const run = latticeKeeper(lattice, threads)(lut, codes, codes);
    if (run === undefined) return undefined;
    let end = 16 * Math.ceil((run.area + threads * areaBytes(lattice)) / 16);
    const take = (bytes: number) => {
      const start = end;
      end += 16 * Math.ceil((bytes + roomBehind) / 16);
      return start;
    };
    const bytes = frameWorkBytes(instantiate<LineModule>(lines, memory), way);
    const starts = Array.from({ length: threads }, () => take(bytes));
    const sizes = [planeBytes(way.from.layout), planeBytes(way.to.layout)];
    const places = Array.from({ length: slots }, () => sizes.map(take));
    growTo(lattice, end);
    const bytesAt = (start: number, i: number) => new Uint8Array(memory.buffer, start, sizes[i]);
    return {
      loops: starts.map((start, i) => ({
        ...{ engine, lines, memory, start },
        run: { ...run, area: run.area + i * areaBytes(lattice) },
      })),
      slots: places.map(([source, target]) => ({ source: bytesAt(source, 0), target: bytesAt(target, 1) })),
    };
  } catch (error) {
    // More than the memory can grow to.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

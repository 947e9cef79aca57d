import { once } from 'node:events';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { planeBytes } from '../../picture/planes.js';
import { packageFolder } from '../maker.js';
import type { FrameJob, FrameStart, FrameWork } from './frame-job.js';
import { type PreparedLoops, prepareLoops } from './frame-loops.js';

/** A frame's place in memory, before and after. */
export interface FrameSlot {
  /** Bytes of the frame as it came; the reader fills them. */
  readonly source: Uint8Array;
  /** Bytes of the frame through the LUT. */
  readonly target: Uint8Array;
}

/** Threads that put frames through a LUT, each a whole frame, and the places that frames wait in: no others are made. */
export interface FramePool {
  /** A place that is free, as soon as there is one. */
  takeSlot(): Promise<FrameSlot>;
  /** Puts the frame of a slot through the LUT. @throws what a thread throws: a fault of ours */
  apply(slot: FrameSlot): Promise<void>;
  /** The slot may be used again. */
  freeSlot(slot: FrameSlot): void;
  close(): Promise<void>;
}

/** Always the built file: a thread cannot be started from TypeScript. */
const threadFile = join(packageFolder, 'dist/src/cli/engine/frame-thread.js');

/** Hands out what is free, in the order of asking. */
function counter<T>(free: T[]) {
  const waiting: ((item: T) => void)[] = [];
  return {
    take: (): Promise<T> => {
      const item = free.shift();
      return item === undefined ? new Promise((resolve) => waiting.push(resolve)) : Promise.resolve(item);
    },
    give: (item: T): void => {
      const next = waiting.shift();
      if (next === undefined) free.push(item);
      else next(item);
    },
  };
}

/** Frames that wait beside those that are worked on: one being read, one being written. */
const waitingFrames = 2;

/** Places for the plain way. */
function plainSlots(count: number, { way }: FrameWork): FrameSlot[] {
  const shared = (bytes: number) => new Uint8Array(new SharedArrayBuffer(bytes));
  const [source, target] = [planeBytes(way.from.layout), planeBytes(way.to.layout)];
  return Array.from({ length: count }, () => ({ source: shared(source), target: shared(target) }));
}

/**
 * @param threads 1 or more; the machine's cores are a good number
 * @param prepare how the compiled loops are had
 */
export function startFramePool(threads: number, work: FrameWork, prepare = prepareLoops): FramePool {
  const count = threads + waitingFrames;
  const prepared: PreparedLoops | undefined = prepare(threads, count, work);
  const workers = Array.from({ length: threads }, (_, i) => {
    const workerData: FrameStart = { work, loops: prepared?.loops[i] };
    return new Worker(threadFile, { workerData });
  });
  const slots = counter([...(prepared?.slots ?? plainSlots(count, work))]);
  const idle = counter([...workers]);
  return {
    takeSlot: slots.take,
    freeSlot: slots.give,
    async apply({ source, target }) {
      const worker = await idle.take();
      worker.postMessage({ source, target } satisfies FrameJob);
      await once(worker, 'message');
      idle.give(worker);
    },
    async close() {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

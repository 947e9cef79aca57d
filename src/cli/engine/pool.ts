import { once } from 'node:events';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { requireFit, type Samples } from '../../lut/apply-codes.js';
import { type ApplyEngine, plainEngine } from '../../lut/engine/engine.js';
import { latticeKeeper } from '../../lut/engine/keep-lattice.js';
import { areaBytes } from '../../lut/engine/run-area.js';
import type { SimdModule } from '../../lut/engine/simd-module.js';
import type { Lut } from '../../lut/lattice.js';
import { instantiate } from '../../maths/web-assembly.js';
import { packageFolder } from '../maker.js';
import type { BandJob, ThreadStart } from './bands.js';
import { loadEngine, loadShared } from './load-engine.js';

/** Threads that put pictures through LUTs together: they stay, and share the LUT and the picture. */
export interface EnginePool {
  readonly threads: number;
  /**
   * As {@link ApplyEngine.apply}; one picture after the other, in the order of asking. Arrays made by
   * {@link sharedSamples} are worked on where they are, others are copied.
   */
  apply(lut: Lut, source: Samples, target: Samples, channels: 3 | 4): Promise<void>;
  close(): Promise<void>;
}

/** Always the built file: a thread cannot be started from TypeScript. */
const threadFile = join(packageFolder, 'dist/src/cli/engine/band-thread.js');

type Shareable = new (buffer: ArrayBufferLike) => Samples;

/** An array for a picture, of the depth of `like`, that threads can share. */
export function sharedSamples<S extends Samples>(like: S, length = like.length): S {
  const Depth = like.constructor as Shareable;
  return new Depth(new SharedArrayBuffer(length * like.BYTES_PER_ELEMENT)) as S;
}

function shared<S extends Samples>(samples: S): S {
  if (samples.buffer instanceof SharedArrayBuffer) return samples;
  const copy = sharedSamples(samples);
  copy.set(samples);
  return copy;
}

/** A pool of one, for machines whose threads cannot share memory. */
function alone(engine: ApplyEngine): EnginePool {
  return {
    threads: 1,
    apply: async (...picture) => engine.apply(...picture),
    close: async () => {},
  };
}

/** @param threads 1 or more; the machine's cores are a good number */
export function startPool(threads: number): EnginePool {
  const loaded = loadShared();
  if (loaded === undefined) return alone(loadEngine());
  const main = instantiate<SimdModule>(loaded.module, loaded.memory);
  const workers = Array.from({ length: threads }, () => startThread(loaded));
  const runFor = latticeKeeper(main, threads);
  let turn = Promise.resolve();

  async function apply(lut: Lut, source: Samples, target: Samples, channels: 3 | 4): Promise<void> {
    const run = runFor(lut, source, target);
    if (run === undefined) return plainEngine.apply(lut, source, target, channels);
    const out = target.buffer instanceof SharedArrayBuffer ? target : sharedSamples(target);
    const next = new Int32Array(new SharedArrayBuffer(4));
    const job = { source: shared(source), target: out, channels, next };
    const ownArea = (thread: number) => ({ ...run, area: run.area + thread * areaBytes(main) });
    await Promise.all(workers.map((worker, i) => runThread(worker, { ...job, run: ownArea(i) })));
    if (out !== target) target.set(out);
  }

  return {
    threads,
    apply(lut, source, target, channels) {
      requireFit(source, target, channels);
      const done = turn.then(() => apply(lut, source, target, channels));
      turn = done.catch(() => undefined);
      return done;
    },
    async close() {
      await turn;
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

function startThread(start: ThreadStart): Worker {
  const worker = new Worker(threadFile, { workerData: start });
  // An idle pool does not keep the program running.
  worker.unref();
  return worker;
}

async function runThread(worker: Worker, job: BandJob): Promise<void> {
  worker.ref();
  worker.postMessage(job);
  await once(worker, 'message');
  worker.unref();
}

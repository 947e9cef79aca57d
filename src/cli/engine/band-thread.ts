// A thread of the pool: takes bands of a picture until none is left, then says so.
import { parentPort, workerData } from 'node:worker_threads';
import { runArea } from '../../lut/engine/run-area.js';
import type { SimdModule } from '../../lut/engine/simd-module.js';
import { instantiate } from '../../maths/web-assembly.js';
import { bandPixels, type BandJob, type ThreadStart } from './bands.js';

const { module, memory } = workerData as ThreadStart;
const engine = instantiate<SimdModule>(module, memory);

parentPort?.on('message', ({ run, source, target, channels, next }: BandJob) => {
  const pixels = source.length / channels;
  for (;;) {
    const first = bandPixels * Atomics.add(next, 0, 1);
    if (first >= pixels) break;
    runArea(engine, run, source, target, channels, first, Math.min(pixels, first + bandPixels));
  }
  parentPort?.postMessage('done');
});

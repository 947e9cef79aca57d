// A thread that puts whole frames of a movie through a LUT: planes in, planes out.
import { parentPort, workerData } from 'node:worker_threads';
import type { SimdModule } from '../../lut/engine/simd-module.js';
import { instantiate } from '../../maths/web-assembly.js';
import { frameThrough } from '../../picture/lines/frame-through.js';
import type { LineModule } from '../../picture/lines/line-module.js';
import { flipPicture } from '../../picture/orientation.js';
import { makePicture } from '../../picture/picture.js';
import { frameToRgb, rgbToFrame } from '../../picture/planar-codec.js';
import type { FrameJob, FrameLoops, FrameStart, FrameWork } from './frame-job.js';
import { loadEngine } from './load-engine.js';

type DoFrame = (job: FrameJob) => void;

/** Line by line through the compiled loops. */
function quickly({ way }: FrameWork, { engine, lines, memory, run, start }: FrameLoops): DoFrame {
  const lattice = instantiate<SimdModule>(engine, memory);
  const module = instantiate<LineModule>(lines, memory);
  const kind = lattice[run.kind].value;
  const through = frameThrough({ module, buffer: memory.buffer, start }, way, (from, to, width) =>
    lattice.run(kind, from, to, width, 3, run.area),
  );
  return ({ source, target }) => through(source.byteOffset, target.byteOffset);
}

/** The whole frame step by step, in plain TypeScript but for the LUT. */
function plainly({ lut, way: { from, to, takes, gives, flip } }: FrameWork): DoFrame {
  const engine = loadEngine();
  const { width, height } = from.layout;
  const rgb = new Uint16Array(3 * width * height);
  return ({ source, target }) => {
    frameToRgb(from, source, rgb, takes);
    if (flip !== undefined)
      rgb.set(flipPicture(makePicture(width, height, { channels: 3, bits: 16 }, rgb), flip).data);
    engine.apply(lut, rgb, rgb, 3);
    rgbToFrame(to, rgb, target, gives);
  };
}

const { work, loops } = workerData as FrameStart;
const doFrame = loops === undefined ? plainly(work) : quickly(work, loops);

parentPort?.on('message', (job: FrameJob) => {
  doFrame(job);
  parentPort?.postMessage('done');
});

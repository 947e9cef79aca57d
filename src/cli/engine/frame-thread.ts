// A thread that puts whole frames of a movie through a LUT: planes in, planes out.
import { parentPort, workerData } from 'node:worker_threads';
import { flipPicture } from '../../picture/orientation.js';
import { makePicture } from '../../picture/picture.js';
import { frameToRgb, rgbToFrame } from '../../picture/planar-codec.js';
import type { FrameJob, FrameWork } from './frame-job.js';
import { loadEngine } from './load-engine.js';

const { lut, from, to, takes, gives, flip } = workerData as FrameWork;
const engine = loadEngine();
const { width, height } = from.layout;
const rgb = new Uint16Array(3 * width * height);

parentPort?.on('message', ({ source, target }: FrameJob) => {
  frameToRgb(from, source, rgb, takes);
  if (flip !== undefined)
    rgb.set(flipPicture(makePicture(width, height, { channels: 3, bits: 16 }, rgb), flip).data);
  engine.apply(lut, rgb, rgb, 3);
  rgbToFrame(to, rgb, target, gives);
  parentPort?.postMessage('done');
});

import { cpus, loadavg, release, totalmem, type } from 'node:os';
import type { Setting } from './setting.js';

/** The machine and the programs that were measured, a line each. */
export function machineLines({ ffmpeg, openColorIO, rounds }: Setting): string[] {
  const pictures =
    openColorIO?.applySeconds === undefined ? ' (files only: pictures need python3-numpy)' : '';
  const theirs = openColorIO === undefined ? 'missing, not compared' : openColorIO.version + pictures;
  const processors = cpus();
  const gigabytes = (totalmem() / 1e9).toFixed(0);
  return [
    `${processors.length} x ${processors[0].model.trim()}, ${gigabytes} GB, ${type()} ${release()}`,
    `Node ${process.version}; ffmpeg ${ffmpeg.version}; OpenColorIO ${theirs}`,
    `medians of ${rounds} or more interleaved rounds`,
    `load of the machine before (0: nobody else works on it): ${loadavg()[0].toFixed(1)}`,
  ];
}

import { spawnSync } from 'node:child_process';
import installed from '@ffmpeg-installer/ffmpeg';
import { height, width } from '../frame.js';

/** A program that can be run, and which one it is. */
export interface Ffmpeg {
  readonly path: string;
  readonly version: string;
}

function versionOf(path: string): string | undefined {
  const { status, stdout } = spawnSync(path, ['-version'], { encoding: 'utf8' });
  return status === 0 ? /version (\S+)/.exec(stdout)?.[1] : undefined;
}

/** The one named by GATELIGHT_FFMPEG, else the machine's own, else the one from npm. */
export function findFfmpeg(): Ffmpeg {
  for (const path of [process.env.GATELIGHT_FFMPEG, 'ffmpeg', installed.path]) {
    const version = path === undefined ? undefined : versionOf(path);
    if (path !== undefined && version !== undefined) return { path, version };
  }
  throw new Error('no ffmpeg runs here: name one by GATELIGHT_FFMPEG');
}

/** A frame and how it is filtered. */
export interface FilterRun {
  readonly frameFile: string;
  /** Pixel format of the file, and the one that is filtered. */
  readonly fileFormat: string;
  readonly format: string;
  readonly lutFile: string;
}

/** Processor seconds of a whole process, one thread: the frame is repeated in front of the filter. */
function processSeconds({ path }: Ffmpeg, run: FilterRun, frames: number): number {
  const { frameFile, fileFormat, format, lutFile } = run;
  const telling = ['-hide_banner', '-nostdin', '-nostats', '-benchmark'];
  const oneThread = ['-filter_threads', '1', '-threads', '1'];
  const input = ['-f', 'rawvideo', '-pix_fmt', fileFormat, '-s', `${width}x${height}`, '-i', frameFile];
  const chain = `format=${format},loop=loop=${frames - 1}:size=1,lut3d=file=${lutFile}:interp=tetrahedral`;
  const words = [...telling, ...oneThread, ...input, '-vf', chain, '-f', 'null', '-'];
  const { status, stderr } = spawnSync(path, words, { encoding: 'utf8' });
  const used = /bench: utime=([\d.]+)s(?: stime=([\d.]+)s)?/.exec(stderr);
  if (status !== 0 || used === null) throw new Error(`ffmpeg failed:\n${stderr}`);
  return Number(used[1]) + Number(used[2] ?? 0);
}

/**
 * Processor seconds that lut3d takes for one frame: what a run of several frames takes more than a run of one. So
 * starting, reading the LUT, and reading and converting the frame, which is repeated inside the chain, are not counted.
 */
export function lut3dSeconds(ffmpeg: Ffmpeg, run: FilterRun, frames: number): number {
  return (processSeconds(ffmpeg, run, frames + 1) - processSeconds(ffmpeg, run, 1)) / frames;
}

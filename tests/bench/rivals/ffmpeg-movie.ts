import { spawnSync } from 'node:child_process';
import type { Ffmpeg } from './ffmpeg.js';

export interface ClipSize {
  readonly width: number;
  readonly height: number;
}

const format = 'yuv422p10le';

/** BT.709, legal range, both ways in full precision: left to itself ffmpeg takes another matrix back than forth. */
const toRgb = 'zscale=matrixin=709:rangein=limited:range=full:filter=bilinear,format=gbrp16le';
const back = `zscale=matrix=709:rangein=full:range=limited:filter=bilinear,format=${format}`;

const lossless = ['-c:v', 'ffv1'];
const tags = [
  '-colorspace',
  'bt709',
  '-color_primaries',
  'bt709',
  '-color_trc',
  'bt709',
  '-color_range',
  'tv',
];

/** Runs ffmpeg to its end. @returns seconds that passed */
function run({ path }: Ffmpeg, ...words: (string | readonly string[])[]): number {
  const start = performance.now();
  const all = ['-v', 'error', '-nostdin', '-y', ...words.flat()];
  const { status, stderr } = spawnSync(path, all, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`ffmpeg ${all.join(' ')} failed:\n${stderr}`);
  return (performance.now() - start) / 1000;
}

/** Whether this ffmpeg converts luma and colour differences in full precision. */
export function hasZscale({ path }: Ffmpeg): boolean {
  return / zscale /.test(spawnSync(path, ['-hide_banner', '-filters'], { encoding: 'utf8' }).stdout);
}

/** Frames that are drawn; more are the same again. */
const drawn = 20;

/** Draws a slow pan over a picture with moving grain: 10 bit 4:2:2 FFV1. */
export function drawClip(
  ffmpeg: Ffmpeg,
  picture: string,
  clip: string,
  frames: number,
  size: ClipSize,
): void {
  const { width, height } = size;
  const pan = `scale=${Math.round(1.25 * width)}:-2,crop=${width}:${height}:x=min(n*2.2\\,in_w-out_w):y=min(n*0.8\\,in_h-out_h)`;
  const planes = `noise=alls=4:allf=t,zscale=matrix=709:range=limited:filter=bilinear,format=${format}`;
  const begin = `${clip}.begin.mkv`;
  const still = ['-loop', '1', '-r', '25', '-i', picture, '-frames:v', `${Math.min(drawn, frames)}`];
  run(ffmpeg, still, '-vf', `${pan},${planes}`, lossless, tags, begin);
  run(
    ffmpeg,
    '-stream_loop',
    `${Math.ceil(frames / drawn)}`,
    '-i',
    begin,
    '-c',
    'copy',
    '-frames:v',
    `${frames}`,
    clip,
  );
}

export const decodeAlone = (ffmpeg: Ffmpeg, clip: string): number =>
  run(ffmpeg, '-i', clip, '-f', 'null', '-');

/** The first frames as they lie in planes. */
export const decodeInto = (ffmpeg: Ffmpeg, clip: string, file: string, frames: number): number =>
  run(ffmpeg, '-i', clip, '-frames:v', `${frames}`, '-f', 'rawvideo', file);

export const encodeAlone = (
  ffmpeg: Ffmpeg,
  file: string,
  clip: string,
  { width, height }: ClipSize,
): number =>
  run(
    ffmpeg,
    ...['-f', 'rawvideo', '-pix_fmt', format, '-s', `${width}x${height}`, '-r', '25', '-i', file],
    ...[lossless, clip],
  );

/** The whole job by ffmpeg itself, tetrahedral, in 16 bit. */
export const wholeJob = (ffmpeg: Ffmpeg, clip: string, lut: string, out: string): number =>
  run(ffmpeg, '-i', clip, '-vf', `${toRgb},lut3d=file=${lut}:interp=tetrahedral,${back}`, lossless, out);

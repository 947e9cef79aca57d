import { spawnSync } from 'node:child_process';
import type { Ffmpeg } from './ffmpeg.js';

export const clipSize = { width: 1920, height: 1080 } as const;

/** BT.709, legal range, both ways in full precision: left to itself ffmpeg takes another matrix back than forth. */
const toRgb = 'zscale=matrixin=709:rangein=limited:range=full:filter=bilinear,format=gbrp16le';
const back = 'zscale=matrix=709:rangein=full:range=limited:filter=bilinear,format=yuv422p10le';
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
const raw = [
  '-f',
  'rawvideo',
  '-pix_fmt',
  'yuv422p10le',
  '-s',
  `${clipSize.width}x${clipSize.height}`,
  '-r',
  '25',
];

/** Runs ffmpeg to its end. @returns seconds that passed */
export function ffmpegSeconds({ path }: Ffmpeg, words: readonly string[]): number {
  const start = performance.now();
  const { status, stderr } = spawnSync(path, ['-v', 'error', '-nostdin', '-y', ...words], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`ffmpeg ${words.join(' ')} failed:\n${stderr}`);
  return (performance.now() - start) / 1000;
}

/** A slow pan over a picture with moving grain: 10 bit 4:2:2 FFV1. */
export function drawClip(ffmpeg: Ffmpeg, picture: string, clip: string, frames: number): void {
  const pan = `scale=2400:-2,crop=1920:1080:x=min(n*2.2\\,480):y=min(n*0.8\\,200),noise=alls=4:allf=t`;
  const planes = 'zscale=matrix=709:range=limited:filter=bilinear,format=yuv422p10le';
  const words = [
    '-loop',
    '1',
    '-r',
    '25',
    '-i',
    picture,
    '-frames:v',
    String(frames),
    '-vf',
    `${pan},${planes}`,
  ];
  ffmpegSeconds(ffmpeg, [...words, '-c:v', 'ffv1', ...tags, clip]);
}

export const decodeAlone = (ffmpeg: Ffmpeg, clip: string): number =>
  ffmpegSeconds(ffmpeg, ['-i', clip, '-f', 'null', '-']);

export const decodeInto = (ffmpeg: Ffmpeg, clip: string, file: string): number =>
  ffmpegSeconds(ffmpeg, ['-i', clip, '-f', 'rawvideo', file]);

export const encodeAlone = (ffmpeg: Ffmpeg, file: string, clip: string): number =>
  ffmpegSeconds(ffmpeg, [...raw, '-i', file, '-c:v', 'ffv1', clip]);

/** The whole job by ffmpeg itself, tetrahedral, in 16 bit. */
export const wholeJob = (ffmpeg: Ffmpeg, clip: string, lut: string, out: string): number =>
  ffmpegSeconds(ffmpeg, [
    '-i',
    clip,
    '-vf',
    `${toRgb},lut3d=file=${lut}:interp=tetrahedral,${back}`,
    '-c:v',
    'ffv1',
    out,
  ]);

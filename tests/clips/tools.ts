import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import installedFfmpeg from '@ffmpeg-installer/ffmpeg';
import installedFfprobe from '@ffprobe-installer/ffprobe';
import { afterAll } from 'vitest';
import type { Tools } from '../../src/clips/tools.js';

/**
 * The programs that come with the development packages, so that a machine with Node alone has them; GATELIGHT_FFMPEG and
 * GATELIGHT_FFPROBE name others, to run the tests with another version.
 */
export const packagedTools: Tools = {
  ffmpeg: process.env.GATELIGHT_FFMPEG ?? installedFfmpeg.path,
  ffprobe: process.env.GATELIGHT_FFPROBE ?? installedFfprobe.path,
};

/** The same for a command line that is started by a test. */
export const packagedEnvironment = {
  GATELIGHT_FFMPEG: packagedTools.ffmpeg,
  GATELIGHT_FFPROBE: packagedTools.ffprobe,
};

export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'gatelight-clips-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface RawFrames {
  readonly format: string;
  readonly width: number;
  readonly height: number;
  /** Frames one after the other. */
  readonly bytes: Uint8Array;
}

/** Options that say what codes stand for. */
const colourTags = (options: readonly string[]): string[] =>
  options.filter((_, i) => options[i - (i % 2)].startsWith('-color'));

/**
 * Makes a movie of raw frames; lossless unless `options`, pairs of a name and a value, say otherwise. Tags of colour are said
 * of the raw frames too: newer versions would convert frames of which nothing is said.
 */
export function encodeClip(
  { ffmpeg }: Tools,
  path: string,
  { format, width, height, bytes }: RawFrames,
  options: readonly string[] = [],
  rate = '25',
): string {
  const raw = ['-f', 'rawvideo', '-pix_fmt', format, '-s', `${width}x${height}`, '-r', rate, '-i', 'pipe:0'];
  execFileSync(
    ffmpeg,
    ['-v', 'error', '-y', ...colourTags(options), ...raw, '-c:v', 'ffv1', ...options, `file:${path}`],
    {
      input: bytes,
      stdio: ['pipe', 'pipe', 'pipe'],
    },
  );
  return path;
}

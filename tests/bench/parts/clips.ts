import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { renderDemoStill } from '../../../src/demo/index.js';
import { buildLook } from '../../../src/jobs/build-look.js';
import { runNode } from '../child.js';
import { besideFigure, type Figure } from '../figures.js';
import { loadReadyLook, program, usualLook } from '../project.js';
import {
  decodeAlone,
  decodeInto,
  drawClip,
  encodeAlone,
  hasZscale,
  wholeJob,
} from '../rivals/ffmpeg-movie.js';
import { inTurns } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

/** Ours may take so many times the longer of decoding alone and encoding alone. */
const mostOfLonger = 1.2;

const fullSize = { width: 1920, height: 1080 } as const;
/** Memory is held against a longer clip at a smaller size, so that it takes no longer. */
const smallSize = { width: 480, height: 270 } as const;

/** Frames: as many as the figure asks for, a tenth for a quick look; and how many times that of the longer clip. */
const frameCounts = { usual: 200, quick: 20 } as const;
const longer = 10;

/** Memory of a long clip beside a short one: no more than the collector's own ups and downs. */
const mostMemory = 1.15;

/** Frames that are compared. */
const compared = 10;

/** Differences of two raw files, in codes of 10 bits. */
function differences(ours: string, theirs: string): { worst: number; share: number } {
  const [a, b] = [ours, theirs].map((file) => {
    const { buffer, byteOffset, length } = readFileSync(file);
    return new Uint16Array(buffer.slice(byteOffset, byteOffset + length));
  });
  let [worst, other] = [a.length === b.length ? 0 : Infinity, 0];
  a.forEach((code, i) => {
    const apart = Math.abs(code - b[i]);
    if (apart > 0) other++;
    worst = Math.max(worst, apart);
  });
  return { worst, share: other / a.length };
}

async function writeStill(path: string): Promise<void> {
  const { data, width, height } = renderDemoStill('regatta', { age: 'blue-shifted', bits: 8 });
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(path);
}

function writeLut(path: string): void {
  const maker = { version: 'bench', sha256: () => '0'.repeat(64) };
  writeFileSync(path, buildLook(loadReadyLook(usualLook), { size: 33 }, maker).bytes);
}

const apply = (lut: string, from: string, to: string) =>
  runNode(program, ['apply', lut, from, '-o', to, '--force']);

async function timesAndCodes({ folder, ffmpeg, quick }: Setting, lut: string, frames: number) {
  const at = (name: string) => join(folder, name);
  drawClip(ffmpeg, at('still.png'), at('clip.mkv'), frames, fullSize);
  decodeInto(ffmpeg, at('clip.mkv'), at('clip.yuv'), frames);
  const times = await inTurns(
    {
      ours: () => apply(lut, at('clip.mkv'), at('ours.mkv')).passingSeconds,
      decode: () => decodeAlone(ffmpeg, at('clip.mkv')),
      encode: () => encodeAlone(ffmpeg, at('clip.yuv'), at('encoded.mkv'), fullSize),
      whole: () => wholeJob(ffmpeg, at('clip.mkv'), lut, at('theirs.mkv')),
    },
    quick ? 1 : 3,
    0,
  );
  for (const whose of ['ours', 'theirs'])
    decodeInto(ffmpeg, at(`${whose}.mkv`), at(`${whose}.yuv`), compared);
  const codes = differences(at('ours.yuv'), at('theirs.yuv'));
  for (const name of ['clip', 'ours', 'theirs']) rmSync(at(`${name}.yuv`));
  for (const name of ['clip', 'ours', 'theirs', 'encoded']) rmSync(at(`${name}.mkv`));
  return { times, codes };
}

/** The most memory that the program ever holds, for a clip of so many frames. */
function memoryFor({ folder, ffmpeg }: Setting, lut: string, frames: number): number {
  const [clip, out] = [join(folder, 'small.mkv'), join(folder, 'small-out.mkv')];
  drawClip(ffmpeg, join(folder, 'still.png'), clip, frames, smallSize);
  const { peakMegabytes } = apply(lut, clip, out);
  for (const file of [clip, out]) rmSync(file);
  return peakMegabytes;
}

async function measure(setting: Setting): Promise<Figure[]> {
  if (!hasZscale(setting.ffmpeg)) {
    process.stderr.write(
      `clips: left out, since ffmpeg ${setting.ffmpeg.version} lacks zscale; GATELIGHT_FFMPEG names another\n`,
    );
    return [];
  }
  const frames = setting.quick ? frameCounts.quick : frameCounts.usual;
  const lut = join(setting.folder, 'look.cube');
  await writeStill(join(setting.folder, 'still.png'));
  writeLut(lut);
  const { times, codes } = await timesAndCodes(setting, lut, frames);
  const timed = { what: `apply to a clip of ${frames} frames`, unit: 's', scale: 1 };
  const beside = (key: string, name: string, of: number[], most?: number) =>
    besideFigure(timed, times.ours, { key: `clips.${key}`, name, times: of }, most);
  const { decode, encode } = times;
  const [short, long] = [frames, longer * frames].map((count) => memoryFor(setting, lut, count));
  return [
    beside(
      'alone',
      'the longer of decoding and encoding alone',
      decode.map((time, i) => Math.max(time, encode[i])),
      mostOfLonger,
    ),
    beside(
      'both',
      'decoding alone and encoding alone, one after the other',
      decode.map((time, i) => time + encode[i]),
    ),
    beside('lut3d', 'lut3d doing the whole job', times.whole, 1),
    { what: 'greatest difference from lut3d', ours: codes.worst, unit: 'codes of 10 bits', most: 1 },
    { what: 'codes that differ from lut3d’s by one', ours: 100 * codes.share, unit: '%' },
    {
      what: `most memory held, ${longer * frames} frames`,
      ours: long,
      unit: 'MB',
      beside: { key: 'clips.memory', name: `${frames} frames`, theirs: short, ratio: long / short },
      most: mostMemory,
    },
  ];
}

export const clipsPart: Part = { title: 'A clip of 1920 x 1080, 10 bit 4:2:2 FFV1, whole process', measure };

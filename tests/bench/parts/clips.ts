import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { renderDemoStill } from '../../../src/demo/index.js';
import { buildLook } from '../../../src/jobs/build-look.js';
import { runNode } from '../child.js';
import { besideFigure, type Figure } from '../figures.js';
import { loadReadyLook, program, usualLook } from '../project.js';
import {
  clipSize,
  decodeAlone,
  decodeInto,
  drawClip,
  encodeAlone,
  wholeJob,
} from '../rivals/ffmpeg-movie.js';
import { inTurns } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

/** Ours may take so many times the longer of decoding alone and encoding alone. */
const mostOfLonger = 1.2;

/** Frames: as many as the figure asks for, a tenth for a quick look; and the longer clip that memory is held against. */
const frameCounts = { usual: 200, quick: 20 } as const;
const longer = 10;

/** Memory of a long clip beside a short one: no more than the collector's own ups and downs. */
const mostMemory = 1.15;

const frameCodes = 2 * clipSize.width * clipSize.height;

/** The greatest difference of two raw files' first frames, in codes of 10 bits. */
function worstDifference(ours: string, theirs: string): number {
  const [a, b] = [ours, theirs].map((file) => {
    const bytes = new Uint8Array(readFileSync(file));
    return new Uint16Array(bytes.buffer, 0, Math.min(frameCodes, bytes.length / 2));
  });
  return a.reduce((worst, code, i) => Math.max(worst, Math.abs(code - b[i])), 0);
}

async function writeStill(path: string): Promise<void> {
  const { data, width, height } = renderDemoStill('regatta', { age: 'blue-shifted', bits: 8 });
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(path);
}

async function measure({ folder, ffmpeg, quick }: Setting): Promise<Figure[]> {
  const frames = quick ? frameCounts.quick : frameCounts.usual;
  const at = (name: string) => join(folder, name);
  const [clip, raw, lut] = [at('clip.mkv'), at('clip.yuv'), at('look.cube')];
  await writeStill(at('still.png'));
  drawClip(ffmpeg, at('still.png'), clip, frames);
  decodeInto(ffmpeg, clip, raw);
  const maker = { version: 'bench', sha256: () => '0'.repeat(64) };
  writeFileSync(lut, buildLook(loadReadyLook(usualLook), { size: 33 }, maker).bytes);
  const peaks: number[] = [];
  const apply = (from: string, to: string) => {
    const { passingSeconds, peakMegabytes } = runNode(program, ['apply', lut, from, '-o', to, '--force']);
    peaks.push(peakMegabytes);
    return passingSeconds;
  };
  const times = await inTurns(
    {
      ours: () => apply(clip, at('ours.mkv')),
      decode: () => decodeAlone(ffmpeg, clip),
      encode: () => encodeAlone(ffmpeg, raw, at('encoded.mkv')),
      whole: () => wholeJob(ffmpeg, clip, lut, at('theirs.mkv')),
    },
    quick ? 1 : 2,
    0,
  );
  const alone = times.decode.map((time, i) => Math.max(time, times.encode[i]));
  for (const whose of ['ours', 'theirs']) decodeInto(ffmpeg, at(`${whose}.mkv`), at(`${whose}.yuv`));
  const worst = worstDifference(at('ours.yuv'), at('theirs.yuv'));
  for (const name of ['clip.yuv', 'ours.yuv', 'theirs.yuv', 'encoded.mkv', 'theirs.mkv']) rmSync(at(name));
  const short = peaks[0];
  drawClip(ffmpeg, at('still.png'), at('long.mkv'), longer * frames);
  apply(at('long.mkv'), at('ours.mkv'));
  const timed = { what: `apply to a clip of ${frames} frames`, unit: 's', scale: 1 };
  const beside = (key: string, name: string, of: number[], most: number) =>
    besideFigure(timed, times.ours, { key: `clips.${key}`, name, times: of }, most);
  const long = peaks[peaks.length - 1];
  return [
    beside('alone', 'the longer of decoding and encoding alone', alone, mostOfLonger),
    beside('lut3d', 'lut3d doing the whole job', times.whole, 1),
    { what: 'greatest difference from lut3d', ours: worst, unit: 'codes of 10 bits', most: 1 },
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

import { linkSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { runNode } from '../child.js';
import { besideFigure, type Figure } from '../figures.js';
import { filmFrame, height, width } from '../frame.js';
import { program, root, usualLook } from '../project.js';
import { inTurns, median } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

const sharpAlone = join(import.meta.dirname, '../rivals/sharp-alone.js');
const kinds = { png: 'PNG', tif: 'TIFF' } as const;
type Extension = keyof typeof kinds;

/** The most of what decoding and encoding alone take. */
const most = 1.15;

/** A folder of numbered frames: one still under many names, since how long it takes is the same for each. */
async function frameFolder(folder: string, extension: Extension, count: number): Promise<string> {
  const frames = join(folder, `frames-${extension}-${count}`);
  mkdirSync(frames);
  const name = (n: number) => join(frames, `reel-${String(n).padStart(4, '0')}.${extension}`);
  await sharp(filmFrame('rgb24'), { raw: { width, height, channels: 3 } }).toFile(name(1));
  for (let n = 2; n <= count; n++) linkSync(name(1), name(n));
  return frames;
}

/** The program over frames, with two workers. */
function applyFrames(frames: string, out: string) {
  return runNode(program, [
    'apply',
    join(root, 'looks', usualLook),
    frames,
    '-o',
    out,
    '--jobs',
    '2',
    '--force',
  ]);
}

/** As flat as memory is that a collector empties: a tenth is its own doing. */
const flat = 1.1;

/** The most memory that ten times as many frames take, beside that of few. */
async function measureLength(few: number, peaks: readonly number[], folder: string): Promise<Figure> {
  const frames = await frameFolder(folder, 'tif', 10 * few);
  const out = join(folder, 'out-long');
  mkdirSync(out);
  const { peakMegabytes } = applyFrames(frames, out);
  for (const path of [frames, out]) rmSync(path, { recursive: true });
  const beside = { key: 'frames.tif.memory', name: `${few} frames`, times: peaks };
  const what = `apply to ${10 * few} frames, TIFF: most memory held`;
  return besideFigure({ what, unit: 'MB', scale: 1 }, [peakMegabytes], beside, flat);
}

async function measureKind(extension: Extension, setting: Setting): Promise<Figure[]> {
  const { folder, quick } = setting;
  const count = quick ? 2 : 20;
  const frames = await frameFolder(folder, extension, count);
  const peaks: number[] = [];
  const into = (work: (out: string) => number) => () => {
    const out = join(folder, 'out');
    mkdirSync(out);
    const time = work(out);
    rmSync(out, { recursive: true });
    return time;
  };
  const times = await inTurns(
    {
      ours: into((out) => {
        const { passingSeconds, peakMegabytes } = applyFrames(frames, out);
        peaks.push(peakMegabytes);
        return passingSeconds;
      }),
      sharp: into((out) => runNode(sharpAlone, [frames, out], root).passingSeconds),
    },
    quick ? 1 : 2,
    0,
  );
  rmSync(frames, { recursive: true });
  const what = `apply to ${count} frames, ${kinds[extension]}`;
  return [
    besideFigure(
      { what, unit: 's', scale: 1 },
      times.ours,
      { key: `frames.${extension}.sharp`, name: 'sharp alone', times: times.sharp },
      most,
    ),
    { what: `${what}: most memory held`, ours: median(peaks), unit: 'MB' },
    ...(extension === 'tif' && !quick ? [await measureLength(count, [median(peaks)], folder)] : []),
  ];
}

export const framesPart: Part = {
  title: 'Frames of 3840 x 2160, whole process with two workers, time that passes',
  measure: async (setting) => [
    ...(await measureKind('png', setting)),
    ...(await measureKind('tif', setting)),
  ],
};

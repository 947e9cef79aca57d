import { linkSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { encoders, kindOfName } from '../../../src/stills/write-still.js';
import { runNode, type Used } from '../child.js';
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

/**
 * A folder of numbered frames, packed without loss as ours are: one still under many names, since how long it takes is the
 * same for each.
 */
async function frameFolder(folder: string, extension: Extension, count: number): Promise<string> {
  const frames = join(folder, `frames-${extension}-${count}`);
  mkdirSync(frames);
  const name = (n: number) => join(frames, `reel-${String(n).padStart(4, '0')}.${extension}`);
  const still = sharp(filmFrame('rgb24'), { raw: { width, height, channels: 3 } });
  await encoders[kindOfName(name(1))](still, 8).toFile(name(1));
  for (let n = 2; n <= count; n++) linkSync(name(1), name(n));
  return frames;
}

/**
 * Who takes the frames, two at a time: the same files, read from and written to the same disk with the same settings. Ours
 * also works out the look's table, and makes each file safely; sharp alone hands rows from decoder to encoder, where a look
 * wants whole frames.
 */
const contenders = {
  ours: (frames: string, out: string) =>
    runNode(program, [
      ...['apply', join(root, 'looks', usualLook), frames],
      ...['-o', out, '--jobs', '2', '--force'],
    ]),
  sharp: (frames: string, out: string) => runNode(sharpAlone, [frames, out], root),
} as const;
type Contender = keyof typeof contenders;

function run(who: Contender, frames: string, folder: string): Used {
  const out = join(folder, 'out');
  mkdirSync(out);
  const used = contenders[who](frames, out);
  rmSync(out, { recursive: true });
  return used;
}

/** As flat as memory is that a collector empties: a tenth is its own doing. */
const flat = 1.1;

type Peaks = Readonly<Record<Contender, readonly number[]>>;

/** The most memory that ten times as many frames take, beside that of few. */
async function measureLength(few: number, peaks: Peaks, folder: string): Promise<Figure[]> {
  const frames = await frameFolder(folder, 'tif', 10 * few);
  const figure = (who: Contender, name: string, most?: number) =>
    besideFigure(
      { what: `${name} ${10 * few} frames, TIFF: most memory held`, unit: 'MB', scale: 1 },
      [run(who, frames, folder).peakMegabytes],
      { key: `frames.tif.memory.longer.${who}`, name: `${few} frames`, times: [median(peaks[who])] },
      most,
    );
  const figures = [figure('ours', 'apply to', flat), figure('sharp', 'sharp alone on')];
  rmSync(frames, { recursive: true });
  return figures;
}

async function measureKind(extension: Extension, setting: Setting): Promise<Figure[]> {
  const { folder, quick } = setting;
  const count = quick ? 2 : 20;
  const frames = await frameFolder(folder, extension, count);
  const peaks = { ours: [] as number[], sharp: [] as number[] };
  const processor = { ours: [] as number[], sharp: [] as number[] };
  const turn = (who: Contender) => () => {
    const { passingSeconds, processorSeconds, peakMegabytes } = run(who, frames, folder);
    peaks[who].push(peakMegabytes);
    processor[who].push(processorSeconds);
    return passingSeconds;
  };
  const times = await inTurns({ ours: turn('ours'), sharp: turn('sharp') }, quick ? 1 : 5, 0);
  rmSync(frames, { recursive: true });
  const what = `apply to ${count} frames, ${kinds[extension]}`;
  return [
    besideFigure(
      { what, unit: 's', scale: 1 },
      times.ours,
      { key: `frames.${extension}.sharp`, name: 'sharp alone', times: times.sharp },
      most,
    ),
    besideFigure({ what: `${what}: processor time`, unit: 's', scale: 1 }, processor.ours, {
      key: `frames.${extension}.processor.sharp`,
      name: 'sharp alone',
      times: processor.sharp,
    }),
    besideFigure({ what: `${what}: most memory held`, unit: 'MB', scale: 1 }, peaks.ours, {
      key: `frames.${extension}.memory.sharp`,
      name: 'sharp alone',
      times: peaks.sharp,
    }),
    ...(extension === 'tif' && !quick ? await measureLength(count, peaks, folder) : []),
  ];
}

export const framesPart: Part = {
  title: 'Frames of 3840 x 2160, whole process with two workers, time that passes',
  measure: async (setting) => [
    ...(await measureKind('png', setting)),
    ...(await measureKind('tif', setting)),
  ],
};

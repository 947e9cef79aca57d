import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadEngine } from '../../../src/cli/engine/load-engine.js';
import type { Codes } from '../../../src/lut/apply-codes.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { writeCubeBytes } from '../../../src/lut/formats/cube/write.js';
import { type Lattice, sampleLattice } from '../../../src/lut/lattice.js';
import { besideFigure, type Figure } from '../figures.js';
import { type Depth, depths, filmFrame, pixels } from '../frame.js';
import { loadReadyLook, usualLook } from '../project.js';
import { lut3dSeconds } from '../rivals/ffmpeg.js';
import { inTurns, processorSeconds, type Turn } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

const sizes = { quick: [33], full: [33, 65] } as const;

/** The most that we may take of ffmpeg's time. */
const targets: Readonly<Record<Depth, number>> = { rgb24: 0.14, rgb48: 0.18 };

/** What ffmpeg calls a depth; in planes its lut3d is written by hand for AVX2. */
const packed: Readonly<Record<Depth, string>> = { rgb24: 'rgb24', rgb48: 'rgb48le' };
const planar = 'gbrp16le';

interface Case {
  readonly depth: Depth;
  readonly size: number;
  readonly lattice: Lattice;
  readonly lutFile: string;
  readonly frame: Codes;
  readonly frameFile: string;
}

/** Seconds a frame of each way of putting it through the LUT, one thread. */
function contenders({ depth, lattice, lutFile, frame, frameFile }: Case, setting: Setting) {
  const frames = setting.quick ? 3 : 6;
  const engine = loadEngine();
  const target = new depths[depth].Codes(frame.length);
  const repeated = (work: () => void) => () =>
    processorSeconds(() => {
      for (let i = 0; i < frames; i++) work();
    }) / frames;
  const filter = (format: string) => () =>
    lut3dSeconds(setting.ffmpeg, { frameFile, fileFormat: packed[depth], format, lutFile }, frames);
  const throughOpenColorIO = setting.openColorIO?.applySeconds;
  // Before it counts, so that the loops are compiled for good.
  engine.apply(lattice, frame, target, 3);
  return {
    ours: repeated(() => engine.apply(lattice, frame, target, 3)),
    copy: repeated(() => target.set(frame)),
    ffmpeg: filter(packed[depth]),
    ffmpegPlanar: depth === 'rgb48' ? filter(planar) : undefined,
    openColorIO: throughOpenColorIO && (() => throughOpenColorIO(lutFile, frameFile)),
  } satisfies Record<string, Turn | undefined>;
}

async function measureCase(one: Case, setting: Setting): Promise<Figure[]> {
  const { depth, size } = one;
  const times = await inTurns(contenders(one, setting), setting.rounds, 0);
  const row = { what: `apply ${depth}, ${size} points, one thread`, unit: 'ns/pixel', scale: 1e9 / pixels };
  const beside = (rival: string, name: string, theirs: readonly number[] | undefined, most?: number) =>
    theirs === undefined
      ? []
      : [
          besideFigure(
            row,
            times.ours,
            { key: `apply.${depth}.${size}.${rival}`, name, times: theirs },
            most,
          ),
        ];
  return [
    ...beside('ffmpeg', 'ffmpeg lut3d', times.ffmpeg, size === 33 ? targets[depth] : undefined),
    ...beside('ffmpegPlanar', `ffmpeg lut3d on ${planar}`, times.ffmpegPlanar, size === 33 ? 1 : undefined),
    ...beside('openColorIO', 'OpenColorIO', times.openColorIO),
    ...beside('copy', 'copy in memory', times.copy),
  ];
}

async function measure(setting: Setting): Promise<Figure[]> {
  const exact = compileLook(loadReadyLook(usualLook));
  const figures: Figure[] = [];
  for (const depth of Object.keys(depths) as Depth[]) {
    const frame = filmFrame(depth);
    const frameFile = join(setting.folder, `frame.${depth}`);
    writeFileSync(frameFile, frame);
    for (const size of setting.quick ? sizes.quick : sizes.full) {
      const lattice = sampleLattice(exact, size);
      const lutFile = join(setting.folder, `look-${size}.cube`);
      writeFileSync(lutFile, writeCubeBytes(lattice));
      figures.push(...(await measureCase({ depth, size, lattice, lutFile, frame, frameFile }, setting)));
    }
  }
  return figures;
}

export const applyPart: Part = {
  title: 'Apply: a frame of 3840 x 2160 through a table, tetrahedral, processor time',
  measure,
};

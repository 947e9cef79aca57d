import { maker } from '../../../src/cli/maker.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { type Figure, timedFigure } from '../figures.js';
import { loadReadyLook, otherLook, usualLook } from '../project.js';
import { inTurns, processorSeconds } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

/** Seconds that a table may take, by its points. */
const targets = { 17: 0.025, 33: 0.15, 65: 1 } as const;

/** Builds before any counts, after which the loops are compiled for good. */
const warmUps = 20;

async function measureLook(file: string, setting: Setting): Promise<Figure[]> {
  const look = loadReadyLook(file);
  // As the light table does while a control moves: the look is compiled anew each time.
  const building = (size: number) => () =>
    processorSeconds(() => sampleLattice(compileLook(look, maker.makeDyeModel), size));
  for (let i = 0; i < warmUps; i++) building(17)();
  const times = await inTurns({ 17: building(17), 33: building(33), 65: building(65) }, setting.rounds, 0);
  const name = file.replace(/\.json$/, '');
  return ([17, 33, 65] as const).map((size) =>
    timedFigure(`${name}, ${size} points`, 'ms', 1000, times[size], 1000 * targets[size]),
  );
}

async function measure(setting: Setting): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const file of setting.quick ? [usualLook] : [usualLook, otherLook])
    figures.push(...(await measureLook(file, setting)));
  return figures;
}

export const buildPart: Part = {
  title: 'Build: a look through the full spectral path, one core, warm, processor time',
  measure,
};

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compileLook } from '../../../src/look/compile-look.js';
import { readCube } from '../../../src/lut/formats/cube/read.js';
import { writeCubeBytes } from '../../../src/lut/formats/cube/write.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { besideFigure, type Figure, timedFigure } from '../figures.js';
import { loadReadyLook, usualLook } from '../project.js';
import { inTurns, processorSeconds } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

const size = 65;
const mostOfTheirs = 0.1;

/** Turns before any counts, after which the loops are compiled for good. */
const warmUps = 10;

/** The plain way to write a table. */
function byToFixed(values: Float64Array): string {
  const words: string[] = [];
  for (const value of values) words.push(value.toFixed(6));
  return words.join(' ');
}

async function measure(setting: Setting): Promise<Figure[]> {
  const lattice = sampleLattice(compileLook(loadReadyLook(usualLook)), size);
  const lutFile = join(setting.folder, 'text.cube');
  writeFileSync(lutFile, writeCubeBytes(lattice));
  const perNumber = 1e9 / lattice.values.length;
  const row = (what: string) => ({ what, unit: 'ns/number', scale: perNumber });

  const writing = await inTurns(
    {
      ours: () => processorSeconds(() => writeCubeBytes(lattice)),
      toFixed: () => processorSeconds(() => byToFixed(lattice.values)),
    },
    2 * setting.rounds,
    warmUps,
  );
  const plain = { key: 'cube.write.toFixed', name: 'toFixed and join', times: writing.toFixed };

  const { openColorIO } = setting;
  const read = () => readCube(readFileSync(lutFile), 'text.cube');
  for (let i = 0; i < warmUps; i++) read();
  const reading = await inTurns(
    {
      ours: () => processorSeconds(read),
      theirs: openColorIO && (() => openColorIO.loadSeconds(lutFile)),
    },
    setting.rounds,
    0,
  );
  const reads = row(`read a .cube of ${size} points`);
  return [
    besideFigure(row(`write a .cube of ${size} points`), writing.ours, plain, mostOfTheirs),
    reading.theirs === undefined
      ? timedFigure(reads.what, reads.unit, reads.scale, reading.ours)
      : besideFigure(
          reads,
          reading.ours,
          { key: 'cube.read.openColorIO', name: 'OpenColorIO', times: reading.theirs },
          mostOfTheirs,
        ),
  ];
}

export const cubeTextPart: Part = { title: 'LUT files as text, processor time', measure };

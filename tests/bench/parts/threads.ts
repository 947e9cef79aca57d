import { type EnginePool, sharedSamples, startPool } from '../../../src/cli/engine/pool.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { besideFigure, type Figure } from '../figures.js';
import { type Depth, depths, filmFrame, pixels } from '../frame.js';
import { loadReadyLook, usualLook } from '../project.js';
import { inTurns, passingSeconds } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

const sizes = { quick: [33], full: [33, 65] } as const;

async function measureDepth(
  depth: Depth,
  size: number,
  pools: readonly EnginePool[],
  setting: Setting,
): Promise<Figure> {
  const lattice = sampleLattice(compileLook(loadReadyLook(usualLook)), size);
  const source = sharedSamples(filmFrame(depth));
  source.set(filmFrame(depth));
  const target = sharedSamples(source);
  const frames = setting.quick ? 4 : 12;
  const [one, two] = pools.map((pool) => async () => {
    const time = await passingSeconds(async () => {
      for (let i = 0; i < frames; i++) await pool.apply(lattice, source, target, 3);
    });
    return time / frames;
  });
  const times = await inTurns({ one, two }, 2 * setting.rounds);
  return besideFigure(
    { what: `apply ${depth}, ${size} points, two threads`, unit: 'ns/pixel', scale: 1e9 / pixels },
    times.two,
    { key: `apply.${depth}.${size}.twoThreads`, name: 'one thread', times: times.one },
    0.55,
  );
}

async function measure(setting: Setting): Promise<Figure[]> {
  const pools = [startPool(1), startPool(2)];
  const figures: Figure[] = [];
  for (const depth of Object.keys(depths) as Depth[])
    for (const size of setting.quick ? sizes.quick : sizes.full)
      figures.push(await measureDepth(depth, size, pools, setting));
  await Promise.all(pools.map((pool) => pool.close()));
  return figures;
}

export const threadsPart: Part = {
  title: 'Two threads beside one, time that passes (tells nothing where other programs keep the cores busy)',
  measure,
};

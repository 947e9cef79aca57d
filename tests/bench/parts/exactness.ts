import { loadEngine } from '../../../src/cli/engine/load-engine.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { sampleLut } from '../../../src/lut/interpolate.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { seededRandom } from '../../../src/maths/random.js';
import type { Figure } from '../figures.js';
import { type Depth, depths } from '../frame.js';
import { loadReadyLook, usualLook } from '../project.js';
import type { Part } from '../setting.js';

/** Colours drawn from all codes. */
const count = 1_000_000;

/** The most that a code may be off, rounding to a whole code included, which alone is a half. */
const most: Readonly<Record<Depth, number>> = { rgb24: 0.51, rgb48: 0.6 };

function largestError(depth: Depth): Figure {
  const { Codes, highest } = depths[depth];
  const random = seededRandom(33);
  const lattice = sampleLattice(compileLook(loadReadyLook(usualLook)), 33);
  const source = new Codes(3 * count).map(() => Math.floor((highest + 1) * random()));
  const target = new Codes(source.length);
  loadEngine().apply(lattice, source, target, 3);
  const exact = Float64Array.from(source, (code) => code / highest);
  sampleLut(lattice)(exact, count);
  let error = 0;
  for (let i = 0; i < exact.length; i++) error = Math.max(error, Math.abs(target[i] - highest * exact[i]));
  return { what: `largest error, ${depth}`, ours: error, unit: 'codes', most: most[depth] };
}

export const exactnessPart: Part = {
  title: 'Exactness: pictures through a table of 33 points beside the same in double precision',
  measure: async () => (Object.keys(depths) as Depth[]).map(largestError),
};

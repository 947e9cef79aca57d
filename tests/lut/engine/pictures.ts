import type { Samples } from '../../../src/lut/apply-codes.js';
import { sampleLut } from '../../../src/lut/interpolate.js';
import { type Lattice, type Lut, sampleLattice } from '../../../src/lut/lattice.js';
import type { Triple } from '../../../src/maths/matrix3.js';

/** The depths of pictures: their array, the highest code, and how far a code may lie from the exact value. */
export const depths = {
  '8 bits': { Depth: Uint8Array, highest: 255, bound: 0.51 },
  '16 bits': { Depth: Uint16Array, highest: 65535, bound: 0.6 },
} as const;

/** Values evenly spread over low..high, unlike their neighbours: as far from a real look as can be. */
export function randomLattice(
  size: number,
  random: () => number,
  [low, high]: readonly [number, number] = [0, 1],
  domainMin?: Triple,
  domainMax?: Triple,
): Lattice {
  const fill = (run: Float64Array) => void run.forEach((_, i) => (run[i] = low + (high - low) * random()));
  return sampleLattice(fill, size, domainMin, domainMax);
}

export function fill<S extends Samples>(samples: S, of: (i: number) => number): S {
  for (let i = 0; i < samples.length; i++) samples[i] = of(i);
  return samples;
}

/** What a picture's pixels become in double precision, clamped to the range of codes but not rounded. */
export function exactly(lut: Lut, source: Samples, channels: 3 | 4, highest: number): Float64Array {
  const pixels = source.length / channels;
  const run = new Float64Array(3 * pixels);
  for (let i = 0; i < 3 * pixels; i++)
    run[i] = source[channels * Math.floor(i / 3) + (i % 3)] / (highest || 1);
  sampleLut(lut)(run, pixels);
  return highest === 0 ? run : run.map((value) => highest * Math.min(1, Math.max(0, value)));
}

/** The furthest that any colour of a picture lies from its exact value. */
export function furthest(target: Samples, exact: Float64Array, channels: 3 | 4): number {
  let worst = 0;
  for (let i = 0; i < exact.length; i++) {
    const code = target[channels * Math.floor(i / 3) + (i % 3)];
    const error = Math.abs(code - exact[i]);
    worst = error <= worst ? worst : error;
  }
  return worst;
}

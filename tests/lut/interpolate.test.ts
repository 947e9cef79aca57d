import { describe, expect, it } from 'vitest';
import type { Interpolation } from '../../src/lut/interpolate.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import type { CurveTable, Lattice, Lut } from '../../src/lut/lattice.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';
import { slowTetrahedral } from './slow-tetrahedral.js';

/** A few roundings of doubles near 1. */
const roundingError = 1e-14;

const seed = 20240611;

function randomLattice(size: number, random: () => number): Lattice {
  return sampleLattice(
    (run) => void run.forEach((_, i) => (run[i] = 4 * random() - 2)),
    size,
    [-0.5, 0, 0.25],
    [1, 2, 0.75],
  );
}

function through(lut: Lut, colour: readonly number[], method?: Interpolation): number[] {
  const run = Float64Array.from(colour);
  sampleLut(lut, method)(run, colour.length / 3);
  return [...run];
}

describe.each(['tetrahedral', 'trilinear'] as const)('%s interpolation', (method) => {
  it('gives every node its own value exactly', () => {
    const lattice = randomLattice(4, seededRandom(seed));
    const nodes = sampleLattice(() => undefined, 4, lattice.domainMin, lattice.domainMax).values;
    const out = through(lattice, [...nodes], method);
    expect(Math.max(...out.map((value, i) => Math.abs(value - lattice.values[i])))).toBeLessThan(
      roundingError,
    );
  });

  it('reproduces any affine map exactly', () => {
    const affine = (run: Float64Array, count: number) => {
      for (let i = 0; i < 3 * count; i += 3) {
        const [r, g, b] = run.subarray(i, i + 3);
        run.set(
          [0.7 * r - 0.2 * g + 0.3 * b + 0.1, -0.4 * r + 1.1 * g + 0.2, 0.05 * r + 0.3 * g - 0.9 * b],
          i,
        );
      }
    };
    const random = seededRandom(seed);
    const colours = Float64Array.from({ length: 3000 }, random);
    const out = through(sampleLattice(affine, 5), [...colours], method);
    affine(colours, 1000);
    expect(Math.max(...out.map((value, i) => Math.abs(value - colours[i])))).toBeLessThan(roundingError);
  });

  it('holds the edge outside the domain, and takes what is not a number for the lower edge', () => {
    const lattice = randomLattice(3, seededRandom(seed));
    const [low, high] = [lattice.values.subarray(0, 3), lattice.values.subarray(-3)];
    expect(through(lattice, [-9, -Infinity, 0.2], method)).toEqual([...low]);
    expect(through(lattice, [NaN, NaN, NaN], method)).toEqual([...low]);
    expect(through(lattice, [9, Infinity, 0.8], method)).toEqual([...high]);
  });

  it('touches only as many colours as it is told', () => {
    const run = Float64Array.of(0.5, 0.5, 0.5, 0.5, 0.5, 0.5);
    sampleLut(randomLattice(3, seededRandom(seed)), method)(run, 1);
    expect([...run.subarray(3)]).toEqual([0.5, 0.5, 0.5]);
  });
});

describe('tetrahedral interpolation', () => {
  it('equals a slow version that weighs the corners of the tetrahedron by volume', () => {
    const random = seededRandom(seed);
    const lattice = randomLattice(6, random);
    let worst = 0;
    for (let i = 0; i < 5000; i++) {
      const colour = [2 * random() - 0.7, 2.4 * random() - 0.2, 0.6 * random() + 0.2];
      const expected = slowTetrahedral(lattice, colour);
      through(lattice, colour).forEach(
        (value, c) => (worst = Math.max(worst, Math.abs(value - expected[c]))),
      );
    }
    expect(worst).toBeLessThan(roundingError);
  });

  it('keeps greys on the diagonal, whatever lies beside it', () => {
    const random = seededRandom(seed);
    const lattice = sampleLattice((run, count) => {
      for (let i = 0; i < 3 * count; i += 3)
        if (run[i] !== run[i + 1] || run[i] !== run[i + 2]) run.set([random(), random(), random()], i);
    }, 5);
    const out = through(lattice, [0.3, 0.3, 0.3]);
    out.forEach((value) => expect(Math.abs(value - 0.3)).toBeLessThan(roundingError));
  });
});

describe('trilinear interpolation', () => {
  it('is the mean of the corners in the middle of a cell', () => {
    const lattice = randomLattice(2, seededRandom(seed));
    const out = through(lattice, [0.25, 1, 0.5], 'trilinear');
    const mean = [0, 1, 2].map(
      (c) => lattice.values.filter((_, i) => i % 3 === c).reduce((a, b) => a + b) / 8,
    );
    out.forEach((value, c) => expect(Math.abs(value - mean[c])).toBeLessThan(roundingError));
  });
});

describe('a 1D LUT', () => {
  const curves: CurveTable = {
    kind: '1d',
    size: 3,
    domainMin: [0, 0, -1],
    domainMax: [1, 2, 1],
    values: Float64Array.of(0, 1, -5, 0.2, 0.4, 0, 1, 0, 3),
  };

  it('runs linearly between its entries, each channel by its own curve', () => {
    expect(through(curves, [0.25, 0.5, 0.5])).toEqual([0.1, 0.7, 1.5]);
  });

  it('holds its ends, and takes what is not a number for the lower end', () => {
    expect(through(curves, [-1, 3, NaN])).toEqual([0, 0, -5]);
    expect(through(curves, [1, 2, 1])).toEqual([1, 0, 3]);
  });
});

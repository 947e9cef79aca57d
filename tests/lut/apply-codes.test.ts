import { describe, expect, it } from 'vitest';
import type { Codes } from '../../src/lut/apply-codes.js';
import { applyToCodes } from '../../src/lut/apply-codes.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import type { CurveTable, Lattice, Lut } from '../../src/lut/lattice.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';

const seed = 19650501;
const depths = [
  ['8 bit', Uint8Array, 255],
  ['16 bit', Uint16Array, 65535],
] as const;

type Depth = (typeof depths)[number][1];

function codes(Depth: Depth, length: number, code: (i: number) => number): Codes {
  const out: Codes = new Depth(length);
  for (let i = 0; i < length; i++) out[i] = code(i);
  return out;
}

/** Codes that may round to the other side because the sums are taken in another order. */
const leastExactShare = 0.999;

function randomLattice(size: number, random: () => number): Lattice {
  const fill = (run: Float64Array) => void run.forEach((_, i) => (run[i] = 1.4 * random() - 0.2));
  return sampleLattice(fill, size, [-0.1, 0, 0.2], [1.2, 0.9, 1]);
}

/** The same in double precision, one picture at a time. */
function reference(lut: Lut, source: Codes, mostIn: number, mostOut: number): number[] {
  const run = Float64Array.from(source, (code) => code / mostIn);
  sampleLut(lut)(run, source.length / 3);
  return Array.from(run, (value) => Math.min(mostOut, Math.max(0, Math.floor(value * mostOut + 0.5))));
}

describe.each(depths)('a picture of %s through a LUT', (_, Depth, most) => {
  it.each([17, 33])('of %i nodes equals double precision', (size) => {
    const random = seededRandom(seed);
    const lattice = randomLattice(size, random);
    const source = codes(Depth, 300_000, () => Math.floor(random() * (most + 1)));
    const target = new Depth(source.length);
    applyToCodes(lattice, source, target, 3);
    const expected = reference(lattice, source, most, most);
    let worst = 0;
    let exact = 0;
    target.forEach((code, i) => {
      worst = Math.max(worst, Math.abs(code - expected[i]));
      if (code === expected[i]) exact++;
    });
    process.stdout.write(
      `codes through ${size} nodes, ${most}: worst ${worst}, exact ${exact / target.length}\n`,
    );
    expect(worst).toBeLessThanOrEqual(1);
    expect(exact / target.length).toBeGreaterThanOrEqual(leastExactShare);
  });

  it.each([2, 17, 33, 65])('of %i nodes that changes nothing keeps every code', (size) => {
    const lattice = sampleLattice(() => undefined, size);
    const source = codes(Depth, 3 * (most + 1), (i) => Math.floor(i / 3));
    const target = new Depth(source.length);
    applyToCodes(lattice, source, target, 3);
    expect(target).toEqual(source);
  });

  it('rounds half up and clamps', () => {
    const values = [0.5 / most, 1.5 / most, 0.49 / most, -3, 7, 1 - 0.5 / most];
    const out = values.map((value) => {
      const target = new Depth(3);
      applyToCodes(
        sampleLattice((run) => void run.fill(value), 2),
        new Depth(3),
        target,
        3,
      );
      return target[0];
    });
    expect(out).toEqual([1, 2, 0, 0, most, most]);
  });

  it('writes 0 where the table is not a number', () => {
    const target = new Depth(3).fill(9);
    applyToCodes(
      sampleLattice((run) => void run.fill(NaN), 2),
      new Depth(3),
      target,
      3,
    );
    expect([...target]).toEqual([0, 0, 0]);
  });

  it('copies alpha, and may write over its source', () => {
    const lattice = sampleLattice((run) => void run.forEach((value, i) => (run[i] = 1 - value)), 2);
    const picture = Depth.of(0, most, 5, 77, most, 0, most - 5, 0);
    applyToCodes(lattice, picture, picture, 4);
    expect([...picture]).toEqual([most, 0, most - 5, 77, 0, most, 5, 0]);
  });

  it('goes through a 1D LUT as through its curves', () => {
    const random = seededRandom(seed);
    const curves: CurveTable = {
      kind: '1d',
      size: 10,
      domainMin: [0, -0.2, 0.1],
      domainMax: [1, 1, 0.8],
      values: Float64Array.from({ length: 30 }, () => 1.2 * random() - 0.1),
    };
    const source = codes(Depth, 3000, () => Math.floor(random() * (most + 1)));
    const target = new Depth(source.length);
    applyToCodes(curves, source, target, 3);
    expect([...target]).toEqual(reference(curves, source, most, most));
  });

  it('refuses lengths that do not fit', () => {
    const lattice = sampleLattice(() => undefined, 2);
    expect(() => applyToCodes(lattice, new Depth(6), new Depth(3), 3)).toThrow(RangeError);
    expect(() => applyToCodes(lattice, new Depth(6), new Depth(6), 4)).toThrow(RangeError);
    expect(() => applyToCodes(lattice, new Depth(0), new Depth(0), 4)).not.toThrow();
  });
});

describe('pictures of two depths', () => {
  it('go from 16 bit to 8 and back, alpha with them', () => {
    const lattice = sampleLattice(() => undefined, 33);
    const eight = new Uint8Array(8);
    applyToCodes(lattice, Uint16Array.of(0, 128, 129, 65535, 65535, 257, 32896, 128), eight, 4);
    expect([...eight]).toEqual([0, 0, 1, 255, 255, 1, 128, 0]);
    const sixteen = new Uint16Array(4);
    applyToCodes(lattice, Uint8Array.of(0, 1, 255, 2), sixteen, 4);
    expect([...sixteen]).toEqual([0, 257, 65535, 514]);
  });
});

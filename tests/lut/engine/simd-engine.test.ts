import { describe, expect, it } from 'vitest';
import { loadEngine } from '../../../src/cli/engine/load-engine.js';
import { applyToCodes } from '../../../src/lut/apply-codes.js';
import type { CurveTable } from '../../../src/lut/lattice.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { seededRandom } from '../../../src/maths/random.js';
import type { Triple } from '../../../src/maths/matrix3.js';
import { depths, exactly, fill, furthest, randomLattice } from './pictures.js';

const engine = loadEngine();
const seed = 19680402;

/** Sizes that devices load, the smallest, the largest that goes the fast way, and some between. */
const sizes = [2, 3, 5, 16, 17, 32, 33, 65, 129];

/** Pixels: none, fewer than are worked on at once, a pass and a little more, an area and a little more. */
const counts = [0, 1, 3, 7, 8, 9, 255, 256, 257, 1000, 8191, 8192, 8193, 20_001];

/** Domains that start and end elsewhere in each channel. */
const otherDomain: readonly [Triple, Triple] = [
  [-0.25, 0, 0.1],
  [1.5, 0.75, 1],
];

it('is the compiled engine that is tested here', () => {
  expect(engine.title).toBe('SIMD');
});

describe.each(Object.entries(depths))('a picture of %s', (_, { Depth, highest, bound }) => {
  const picture = (length: number, random: () => number) =>
    fill(new Depth(length), () => Math.floor(random() * (highest + 1)));

  function worstThrough(
    lut: Parameters<typeof engine.apply>[0],
    channels: 3 | 4,
    pixels: number,
    random: () => number,
  ) {
    const source = picture(channels * pixels, random);
    const target = new Depth(source.length);
    engine.apply(lut, source, target, channels);
    return furthest(target, exactly(lut, source, channels, highest), channels);
  }

  it.each(sizes)('through %i random nodes a side lies within its bound of the exact value', (size) => {
    const random = seededRandom(seed + size);
    const worst = worstThrough(randomLattice(size, random), 3, 60_000, random);
    process.stdout.write(`${highest}, ${size} nodes: ${worst.toFixed(4)} of a code at most\n`);
    expect(worst).toBeLessThanOrEqual(bound);
  });

  it.each(sizes)('through %i nodes on another domain, with values beyond black and white', (size) => {
    const random = seededRandom(seed - size);
    const lattice = randomLattice(size, random, [-3.9, 3.9], ...otherDomain);
    expect(worstThrough(lattice, 4, 40_000, random)).toBeLessThanOrEqual(bound);
  });

  it('with values a little beyond black and white', () => {
    const random = seededRandom(seed);
    expect(worstThrough(randomLattice(9, random, [-1.9, 1.9]), 3, 40_000, random)).toBeLessThanOrEqual(bound);
  });

  it.each(counts)('of %i pixels is done to its last pixel, and nothing behind it', (pixels) => {
    const random = seededRandom(seed + pixels);
    const lattice = randomLattice(4, random);
    for (const channels of [3, 4] as const) {
      const source = picture(channels * pixels, random);
      const [fast, plain] = [source, source].map(() => new Depth(source.length + 8).fill(7));
      engine.apply(lattice, source, fast.subarray(0, source.length), channels);
      applyToCodes(lattice, source, plain.subarray(0, source.length), channels);
      expect([...fast.subarray(source.length)]).toEqual(Array(8).fill(7));
      expect(Math.max(0, ...fast.map((code, i) => Math.abs(code - plain[i])))).toBeLessThanOrEqual(1);
    }
  });

  it('keeps every code through a LUT that changes nothing', () => {
    const source = fill(new Depth(3 * (highest + 1)), (i) => Math.floor(i / 3));
    for (const size of sizes) {
      const target = new Depth(source.length);
      engine.apply(
        sampleLattice(() => undefined, size),
        source,
        target,
        3,
      );
      expect(target.findIndex((code, i) => code !== source[i])).toBe(-1);
    }
  });

  it('meets nodes exactly at the corners of the cube, whatever lies next to them', () => {
    const lattice = randomLattice(6, seededRandom(seed));
    const corners = fill(new Depth(24), (i) => ((Math.floor(i / 3) >> (i % 3)) & 1) * highest);
    const target = new Depth(24);
    engine.apply(lattice, corners, target, 3);
    expect(furthest(target, exactly(lattice, corners, 3, highest), 3)).toBeLessThanOrEqual(0.51);
  });

  it('copies alpha, and may write over its source', () => {
    const random = seededRandom(seed);
    const source = picture(4 * 9000, random);
    const target = source.slice();
    const lattice = randomLattice(17, random);
    engine.apply(lattice, target, target, 4);
    const alphas = (codes: typeof source) => codes.filter((_code, i) => i % 4 === 3);
    expect(alphas(target)).toEqual(alphas(source));
    expect(furthest(target, exactly(lattice, source, 4, highest), 4)).toBeLessThanOrEqual(bound);
  });

  it('clamps at black and white', () => {
    const lattice = sampleLattice((run) => void run.forEach((value, i) => (run[i] = 3 * value - 1)), 2);
    const target = new Depth(6);
    engine.apply(lattice, Depth.of(0, highest, 0, highest, 0, highest), target, 3);
    expect([...target]).toEqual([0, highest, 0, highest, 0, highest]);
  });
});

describe('a picture in floats', () => {
  /** Products and sums of four floats of up to 4, their fractions rounded to floats: a few parts in 2^24. */
  const floatBound = 3e-6;

  it.each([2, 17, 33, 65])('through %i nodes, in and beyond its domain', (size) => {
    const random = seededRandom(seed + size);
    const lattice = randomLattice(size, random, [-4, 4], ...otherDomain);
    for (const channels of [3, 4] as const) {
      const source = fill(new Float32Array(channels * 20_000), () => 3 * random() - 1);
      const target = new Float32Array(source.length);
      engine.apply(lattice, source, target, channels);
      expect(furthest(target, exactly(lattice, source, channels, 0), channels)).toBeLessThan(floatBound);
    }
  });

  it('takes what is not a number for the lower edge, and infinities for the ends', () => {
    const lattice = randomLattice(5, seededRandom(seed));
    const source = Float32Array.of(NaN, NaN, NaN, -Infinity, -9, 0, Infinity, 9, 1, 0, 0, 0, 1, 1, 1);
    const [fast, plain] = [new Float32Array(15), new Float32Array(15)];
    engine.apply(lattice, source, fast, 3);
    applyToCodes(lattice, source, plain, 3);
    expect(fast).toEqual(plain);
    expect([...fast.subarray(0, 3)]).toEqual([...fast.subarray(9, 12)]);
  });
});

describe('what the compiled loops do not do goes the plain way', () => {
  const random = seededRandom(seed);
  const source = fill(new Uint16Array(3000), () => Math.floor(random() * 65536));
  const curves: CurveTable = {
    kind: '1d',
    size: 8,
    domainMin: [0, 0, 0],
    domainMax: [1, 1, 1],
    values: Float64Array.from({ length: 24 }, random),
  };
  const luts = {
    'a 1D LUT': curves,
    'a 3D LUT of 130 nodes a side': randomLattice(130, random),
    'values far beyond white': randomLattice(5, random, [-60, 60]),
    'values that are not numbers': { ...randomLattice(2, random), values: new Float64Array(24).fill(NaN) },
  };
  it.each(Object.entries(luts))('%s', (_, lut) => {
    for (const target of [new Uint16Array(3000), new Uint8Array(3000)]) {
      const plain = target.slice();
      engine.apply(lut, source, target, 3);
      applyToCodes(lut, source, plain, 3);
      expect(target).toEqual(plain);
    }
  });

  it('a change of depth', () => {
    const lattice = randomLattice(17, random);
    const [fast, plain] = [new Uint8Array(3000), new Uint8Array(3000)];
    engine.apply(lattice, source, fast, 3);
    applyToCodes(lattice, source, plain, 3);
    expect(fast).toEqual(plain);
  });
});

describe('the engine', () => {
  it('goes from one LUT and one depth to another and back', () => {
    const random = seededRandom(seed);
    const luts = [randomLattice(33, random), randomLattice(4, random), randomLattice(65, random)];
    const eight = fill(new Uint8Array(300), () => Math.floor(256 * random()));
    const sixteen = Uint16Array.from(eight, (code) => 257 * code);
    for (const lut of [...luts, ...luts])
      for (const source of [eight, sixteen]) {
        const target = source.slice();
        const highest = source === eight ? 255 : 65535;
        engine.apply(lut, source, target, 3);
        expect(furthest(target, exactly(lut, source, 3, highest), 3)).toBeLessThanOrEqual(0.6);
      }
  });

  it('refuses lengths that do not fit, and floats with codes', () => {
    const lattice = randomLattice(2, seededRandom(seed));
    expect(() => engine.apply(lattice, new Uint8Array(6), new Uint8Array(3), 3)).toThrow(RangeError);
    expect(() => engine.apply(lattice, new Uint8Array(6), new Uint8Array(6), 4)).toThrow(RangeError);
    expect(() => engine.apply(lattice, new Float32Array(6), new Uint8Array(6), 3)).toThrow(RangeError);
    expect(() => engine.apply(lattice, new Uint8Array(6), new Float32Array(6), 3)).toThrow(RangeError);
  });
});

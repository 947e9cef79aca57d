import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyToCodes, type Codes } from '../../src/lut/apply-codes.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { type Lattice, sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';
import { slowTetrahedral } from '../lut/slow-tetrahedral.js';

const seed = 20010911;

/** Rounding of a few sums of values up to some tens. */
const rounding = 1e-12;

const code = fc.double({ min: -0.5, max: 1.5, noNaN: true });
const colour = fc.tuple(code, code, code);
const method = fc.constantFrom('tetrahedral', 'trilinear');
const coefficient = fc.double({ min: -3, max: 3, noNaN: true });
const axis = fc.record({
  min: fc.double({ min: -2, max: 0.4, noNaN: true }),
  width: fc.double({ min: 0.1, max: 3, noNaN: true }),
});

/** A lattice of random values, with a domain of its own for each channel. */
const lattice = fc
  .record({ size: fc.integer({ min: 2, max: 9 }), axes: fc.tuple(axis, axis, axis), values: fc.nat() })
  .map(({ size, axes, values }): Lattice => {
    const random = seededRandom(values);
    const fill = (run: Float64Array) => void run.forEach((_, i) => (run[i] = 3 * random() - 1));
    const [r, g, b] = axes;
    return sampleLattice(
      fill,
      size,
      [r.min, g.min, b.min],
      [r.min + r.width, g.min + g.width, b.min + b.width],
    );
  });

const through = (lut: Lattice, given: readonly number[], how: 'tetrahedral' | 'trilinear') => {
  const run = Float64Array.from(given);
  sampleLut(lut, how)(run, 1);
  return [...run];
};

const holds = <T extends [unknown, ...unknown[]]>(property: fc.IProperty<T>) =>
  fc.assert(property, { seed, numRuns: 1000 });

describe('interpolation', () => {
  it('reproduces every affine map inside its domain', () => {
    const row = fc.tuple(coefficient, coefficient, coefficient, coefficient);
    const affine = fc.tuple(row, row, row);
    holds(
      fc.property(lattice, affine, colour, method, ({ size, domainMin, domainMax }, rows, given, how) => {
        const apply = ([r, g, b]: ArrayLike<number> & Iterable<number>) =>
          rows.map((m) => m[0] * r + m[1] * g + m[2] * b + m[3]);
        const map = (run: Float64Array, count: number) => {
          for (let i = 0; i < 3 * count; i += 3) run.set(apply(run.subarray(i, i + 3)), i);
        };
        const held = given.map((x, c) => Math.min(domainMax[c], Math.max(domainMin[c], x)));
        const out = through(sampleLattice(map, size, domainMin, domainMax), given, how);
        apply(held).forEach((expected, c) => expect(Math.abs(out[c] - expected)).toBeLessThan(rounding));
      }),
    );
  });

  it('never leaves the range of the values in its table', () => {
    holds(
      fc.property(lattice, colour, method, (table, given, how) => {
        const [least, most] = [Math.min(...table.values), Math.max(...table.values)];
        for (const value of through(table, given, how)) {
          expect(value).toBeGreaterThanOrEqual(least - rounding);
          expect(value).toBeLessThanOrEqual(most + rounding);
        }
      }),
    );
  });

  it('rises where its table rises', () => {
    holds(
      fc.property(lattice, colour, fc.nat(2), code, method, (table, given, channel, other, how) => {
        const rising = { ...table, values: table.values.slice() };
        const { size, values } = rising;
        const stride = 3 * size ** channel;
        for (let i = 0; i < values.length; i++)
          if (Math.floor(i / stride) % size > 0) values[i] = values[i - stride] + Math.abs(values[i]);
        const [low, high] = [Math.min(given[channel], other), Math.max(given[channel], other)];
        const at = (x: number) =>
          through(
            rising,
            given.map((y, c) => (c === channel ? x : y)),
            how,
          );
        const above = at(high);
        at(low).forEach((value, c) => expect(value).toBeLessThanOrEqual(above[c] + rounding));
      }),
    );
  });

  it('has no jumps: neighbouring codes give neighbouring values', () => {
    const step = 1e-9;
    holds(
      fc.property(lattice, colour, fc.nat(2), method, (table, given, channel, how) => {
        const near = given.map((x, c) => (c === channel ? x + step : x));
        const steepest = (4 * (table.size - 1)) / (table.domainMax[channel] - table.domainMin[channel]);
        const there = through(table, near, how);
        through(table, given, how).forEach((value, c) =>
          expect(Math.abs(value - there[c])).toBeLessThan(steepest * step + rounding),
        );
      }),
    );
  });

  it('tetrahedral equals the slow version that weighs by volume', () => {
    holds(
      fc.property(lattice, colour, (table, given) => {
        const expected = slowTetrahedral(table, given);
        through(table, given, 'tetrahedral').forEach((value, c) =>
          expect(Math.abs(value - expected[c])).toBeLessThan(rounding),
        );
      }),
    );
  });
});

describe('codes through a LUT', () => {
  const picture = fc.record({
    deep: fc.boolean(),
    toDeep: fc.boolean(),
    alpha: fc.boolean(),
    pixels: fc.integer({ min: 0, max: 40 }),
    values: fc.nat(),
  });

  it('are within one code of double precision, alpha untouched', () => {
    let codes = 0;
    let exact = 0;
    fc.assert(
      fc.property(lattice, picture, (table, { deep, toDeep, alpha, pixels, values }) => {
        const random = seededRandom(values);
        const channels = alpha ? 4 : 3;
        const [most, mostOut] = [deep ? 65535 : 255, toDeep ? 65535 : 255];
        const source: Codes = deep ? new Uint16Array(channels * pixels) : new Uint8Array(channels * pixels);
        source.forEach((_, i) => (source[i] = Math.floor(random() * (most + 1))));
        const target: Codes = toDeep ? new Uint16Array(source.length) : new Uint8Array(source.length);
        applyToCodes(table, source, target, channels);
        for (let i = 0; i < source.length; i += channels) {
          const out = through(
            table,
            [...source.subarray(i, i + 3)].map((x) => x / most),
            'tetrahedral',
          );
          out.forEach((value, c) => {
            const expected = Math.min(mostOut, Math.max(0, Math.floor(value * mostOut + 0.5)));
            expect(Math.abs(target[i + c] - expected)).toBeLessThanOrEqual(1);
            codes++;
            if (target[i + c] === expected) exact++;
          });
          if (alpha) expect(target[i + 3]).toBe(Math.round((source[i + 3] * mostOut) / most));
        }
      }),
      { seed, numRuns: 300 },
    );
    process.stdout.write(`codes through random LUTs: ${exact} of ${codes} exact\n`);
    expect(exact / codes).toBeGreaterThanOrEqual(0.999);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uvPrimeOfXyz } from '../../src/colour/chromaticity.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz, whiteOf } from '../../src/colour/primaries/rgb-matrix.js';
import { gamutCompressionRun, highestOutness } from '../../src/delivery/gamut-compression.js';
import { transform3, type Triple } from '../../src/maths/matrix3.js';

const seed = 62;
const toXyz = rgbToXyz(primaries.bt709);
const luma: Triple = [toXyz[3], toXyz[4], toXyz[5]];
const luminance = (colour: ArrayLike<number>) => luma.reduce((sum, weight, k) => sum + weight * colour[k], 0);
const roundings = 1e-12;

/** Linear BT.709 with channels below 0 as wider primaries give them, of some luminance. */
const channel = fc.double({ min: -0.4, max: 1, noNaN: true });
const colour: fc.Arbitrary<Triple> = fc
  .tuple(channel, channel, channel)
  .filter((given) => luminance(given) > 0.01) as fc.Arbitrary<Triple>;
const reach = fc.double({ min: 1.001, max: 6, noNaN: true });

function compressed(limit: number, given: Triple): Triple {
  const run = Float64Array.from(given);
  gamutCompressionRun(limit, luma)(run, 1);
  return [run[0], run[1], run[2]];
}

const outness = (given: Triple) => highestOutness(Float64Array.from(given), 1, luma);

describe('how far a colour is out', () => {
  it.each([
    [[0.5, 0.5, 0.5], 0],
    [[1, 0, 0], 1],
    [[0.2, 0.7, 0], 1],
    [[0.5, 0.25, 0.25], 1 - 0.25 / (0.25 + 0.25 * 0.2126)],
  ] as const)('%j: %s', (given, expected) => expect(outness(given)).toBeCloseTo(expected, 4));

  it('is above 1 exactly where a channel is below 0', () =>
    fc.assert(
      fc.property(colour, (given) => {
        const least = Math.min(...given);
        return Math.abs(least) < roundings || outness(given) > 1 === least < 0;
      }),
      { seed },
    ));

  it('is not asked of black and its roundings', () => {
    expect(highestOutness(Float64Array.of(0, 0, 0, 1e-17, -1e-17, 1e-19), 2, luma)).toBe(0);
    expect(highestOutness(Float64Array.of(-0.1, -0.1, -0.1), 1, luma)).toBe(0);
    expect(highestOutness(new Float64Array(0), 0, luma)).toBe(0);
  });
});

describe('gamut compression', () => {
  it('brings everything in, near its reach and beyond', () =>
    fc.assert(
      fc.property(colour, reach, (given, limit) => Math.min(...compressed(limit, given)) >= -roundings),
      { seed, numRuns: 1000 },
    ));

  it("keeps luminance and dominant wavelength: the line to white in u'v'", () =>
    fc.assert(
      fc.property(colour, reach, (given, limit) => {
        const result = compressed(limit, given);
        if (Math.abs(luminance(result) - luminance(given)) > roundings) return false;
        const [u, v] = uvPrimeOfXyz(transform3(toXyz, given));
        const [u2, v2] = uvPrimeOfXyz(transform3(toXyz, result));
        const [wu, wv] = uvPrimeOfXyz(whiteOf(primaries.bt709));
        const cross = (u - wu) * (v2 - wv) - (v - wv) * (u2 - wu);
        const along = (u - wu) * (u2 - wu) + (v - wv) * (v2 - wv);
        return Math.abs(cross) < 1e-9 && along >= -1e-12;
      }),
      { seed, numRuns: 1000 },
    ));

  it('keeps the order: of two colours on a line from grey the further out stays so', () =>
    fc.assert(
      fc.property(colour, reach, fc.double({ min: 0, max: 1, noNaN: true }), (given, limit, share) => {
        const grey = luminance(given);
        const nearer = given.map((value) => grey + share * (value - grey)) as unknown as Triple;
        return outness(compressed(limit, nearer)) <= outness(compressed(limit, given)) + 1e-9;
      }),
      { seed, numRuns: 1000 },
    ));

  it('leaves colours up to 0.8 of the way to the edge as they are', () =>
    fc.assert(
      fc.property(
        colour,
        reach,
        (given, limit) =>
          outness(given) > 0.8 || compressed(limit, given).every((value, k) => value === given[k]),
      ),
      { seed, numRuns: 1000 },
    ));

  it('is the identity where nothing lies outside', () =>
    fc.assert(
      fc.property(colour, fc.double({ min: -1, max: 1, noNaN: true }), (given, limit) =>
        compressed(limit, given).every((value, k) => value === given[k]),
      ),
      { seed },
    ));

  it('takes the colour at its reach to the edge, and one short of it not quite', () => {
    const at = (out: number): Triple => {
      // Red lacking, green and blue such that luminance is 0.3.
      const r = 0.3 * (1 - out);
      const rest = (0.3 - luma[0] * r) / (luma[1] + luma[2]);
      return [r, rest, rest];
    };
    expect(outness(at(1.4))).toBeCloseTo(1.4, 12);
    expect(Math.abs(Math.min(...compressed(1.4, at(1.4))))).toBeLessThan(roundings);
    expect(Math.min(...compressed(1.4, at(1.3)))).toBeGreaterThan(1e-4);
  });

  it('leaves the identity without a kink, and does not step at its limit', () => {
    const along = (out: number) => compressed(1.5, [0.3 * (1 - out), 0.3, 0.3]);
    for (const out of [0.8, 1.5]) {
      const [below, above] = [along(out - 1e-6), along(out + 1e-6)];
      below.forEach((value, k) => expect(Math.abs(above[k] - value)).toBeLessThan(1e-6));
    }
    const slope = (out: number) => (along(out + 1e-6)[0] - along(out - 1e-6)[0]) / 2e-6;
    expect(Math.abs(slope(0.8 + 2e-6) / slope(0.8 - 2e-6) - 1)).toBeLessThan(1e-3);
  });

  it('does not step where luminance passes zero: such colours end in grey', () => {
    const at = (extra: number): Triple => {
      const g = -0.1;
      const b = 0.1;
      return [(-luma[1] * g - luma[2] * b + extra) / luma[0], g, b];
    };
    const [below, above] = [compressed(1.5, at(-1e-9)), compressed(1.5, at(1e-9))];
    below.forEach((value, k) => expect(Math.abs(value - above[k])).toBeLessThan(1e-7));
    above.forEach((value) => expect(Math.abs(value)).toBeLessThan(1e-7));
  });

  it('of no light, of less than none and of infinite reach is finite', () => {
    for (const given of [
      [0, 0, 0],
      [-1, -1, -1],
      [-1, 2, -3],
      [1e-300, -1e-300, 0],
    ] as Triple[])
      for (const limit of [1.1, 2, Infinity])
        compressed(limit, given).forEach((value) => expect(Number.isFinite(value)).toBe(true));
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rangeScale, toFull } from '../../src/colour/signal-range.js';
import { compileLook } from '../../src/look/compile-look.js';
import { anyLook, encodings, lookOf, next, primariesChoices, through, usualLook } from './looks.js';

const seed = 101;
/** What a lattice of six decimals cannot tell. */
const identity = 1e-6;
/** The same where a channel has no light: its rounding, 1e-15 of white, through the endless slope of a pure power of 2.6. */
const darkChannel = 2e-6;

/** Code values of the cube as a signal has them, with those that some encodings cannot give back left out. */
function codesOf(encoding: string, range: 'full' | 'legal'): number[][] {
  const { black, white } = rangeScale[range];
  // BT.709's rounded constants leave the signals just below 0.0813 without a light of their own.
  const steps = [0, 0.02, 0.15, 0.3, 0.5, 0.7, 0.9, 1].filter((signal) => encoding !== 'pq' || signal !== 0);
  const codes = steps.map((signal) => black + signal * (white - black));
  return codes.flatMap((r) => codes.flatMap((g) => codes.map((b) => [r, g, b])));
}

describe('a look that asks for nothing', () => {
  it.each(
    Object.entries(encodings).flatMap(([encoding, how]) =>
      Object.entries(primariesChoices).flatMap(([name, primaries]) =>
        (['full', 'legal'] as const).map((range) => ({
          encoding,
          name,
          range,
          camera: { encoding: how, primaries, range },
        })),
      ),
    ),
  )('is the identity: $encoding, $name, $range', ({ encoding, range, camera }) => {
    const codes = codesOf(encoding, range);
    for (const fields of [{ camera }, { camera, delivery: camera }, { camera, ...next }]) {
      const values = Float64Array.from(codes.flat());
      compileLook(lookOf(fields))(values, codes.length);
      const worst = codes.flat().reduce((most, code, i) => Math.max(most, Math.abs(values[i] - code)), 0);
      expect(worst, JSON.stringify(fields)).toBeLessThan(encoding === 'gamma-2.6' ? darkChannel : identity);
    }
  });

  it('is the identity by another name of the same encoding', () => {
    const look = lookOf({ camera: { encoding: 'bt1886' }, delivery: { encoding: 'gamma-2.4' } });
    for (const code of [0, 0.1, 0.5, 1]) expect(through(look, [code, code, code])[1]).toBeCloseTo(code, 12);
  });

  it('leaves even codes beyond the cube alone', () =>
    expect(through(lookOf({}), [-0.5, 1.5, 0.5])).toEqual([-0.5, 1.5, 0.5]));
});

describe('a look that takes off the stray light of a scan', () => {
  it.each(['bt709', 'p3-d65', 'bt2020'])(
    'leaves what is darker than that light its colour: %s',
    (primaries) => {
      const stock = { loss: { cyan: 0.5, yellow: 0.2 }, stain: { blue: 0.03 } };
      const look = lookOf({ camera: { encoding: 'linear', primaries, flare: 0.05 }, stock });
      const dark = [0.02, 0, 0, 0, 0.02, 0, 0, 0, 0.02, 0.02, 0.004, 0.004];
      const values = Float64Array.from(dark);
      compileLook(look)(values, 4);
      values.forEach((v, i) => expect(v).toBeCloseTo(dark[i], 9));
    },
  );
});

describe('every look', () => {
  const around = Array.from({ length: 343 }, (_, i) => [i % 7, Math.floor(i / 7) % 7, Math.floor(i / 49)])
    .flat()
    .map((step) => -0.5 + step / 3);

  it.each([true, false])('gives numbers from 0 to 1 in the cube and beyond, usual values %s', (usual) =>
    fc.assert(
      fc.property(anyLook(usual), (look) => {
        const values = Float64Array.from(around);
        compileLook({ ...look, print: look.print ?? { ...lookOf({ print: next.print }).print! } })(
          values,
          343,
        );
        return values.every((value) => value >= 0 && value <= 1);
      }),
      { seed, numRuns: 120 },
    ),
  );

  it('gives no NaN for infinite codes, and does not carry a NaN into the next colour', () =>
    fc.assert(
      fc.property(usualLook, (look) => {
        const values = Float64Array.of(Infinity, 0, 0, -Infinity, 1, 1, NaN, NaN, NaN, 0.5, 0.5, 0.5);
        const run = compileLook(look);
        run(values, 4);
        if (values.some(Number.isNaN)) return false;
        const alone = Float64Array.of(0.5, 0.5, 0.5);
        compileLook(look)(alone, 1);
        return alone.every((value, k) => Math.abs(value - values[9 + k]) < 1e-9);
      }),
      { seed, numRuns: 50 },
    ));

  it('gives a colour the same code alone as in company', () =>
    fc.assert(
      fc.property(anyLook(true), (look) => {
        const whole = Float64Array.from(around, (code) => Math.min(1, Math.max(0, code)));
        const given = whole.slice();
        compileLook(look)(whole, 343);
        return [0, 57, 171, 342].every((i) => {
          const alone = through(look, [...given.subarray(3 * i, 3 * i + 3)]);
          // Newton's rest, seen through the steepest encoding at black.
          return alone.every((value, k) => Math.abs(value - whole[3 * i + k]) < 1e-5);
        });
      }),
      { seed, numRuns: 50 },
    ));

  it('is one function: what it was asked before does not matter', () => {
    const look = lookOf({
      stock: { loss: { cyan: 0.3 } },
      projector: { lamp: 'incandescent' },
      camera: { range: 'legal' },
    });
    const run = compileLook(look);
    const first = Float64Array.of(0.6, 0.5, 0.4);
    run(first, 1);
    run(Float64Array.from(around), 343);
    const second = Float64Array.of(0.6, 0.5, 0.4);
    run(second, 1);
    second.forEach((value, k) => expect(Math.abs(value - first[k])).toBeLessThan(1e-9));
    expect(toFull(second[0], 'legal')).toBeGreaterThan(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rollOffCurve, rollOffRun, type RollOff } from '../../src/delivery/roll-off.js';

const seed = 61;
const share = fc.double({ min: 0, max: 1, noNaN: true });
const rollOffs: fc.Arbitrary<RollOff> = fc.record({
  shoulderStart: fc.double({ min: 0, max: 0.98, noNaN: true }),
  shoulderSoftness: fc.oneof(share, fc.double({ min: 0, max: 0.01, noNaN: true })),
  toe: share,
});
const light = fc.oneof(
  fc.double({ min: -0.5, max: 2, noNaN: true }),
  fc.double({ min: 0, max: 0.05, noNaN: true }),
  fc.double({ min: 1, max: 1e6, noNaN: true }),
);
/** Powers and roots of doubles near 1. */
const roundings = 1e-12;

describe('the tone curve of a roll-off', () => {
  it('never falls, whatever the settings', () =>
    fc.assert(
      fc.property(rollOffs, light, light, (rollOff, a, b) => {
        const curve = rollOffCurve(rollOff);
        const [low, high] = a < b ? [a, b] : [b, a];
        return curve(high) >= curve(low) - roundings;
      }),
      { seed, numRuns: 5000 },
    ));

  it('rises in small steps too, and strictly where something is left to tell apart', () =>
    fc.assert(
      fc.property(rollOffs, (rollOff) => {
        const curve = rollOffCurve({ ...rollOff, toe: Math.min(rollOff.toe, 0.99) });
        let before = -Infinity;
        for (let i = 0; i <= 1000; i++) {
          const value = curve(i / 1000);
          if (value < before - roundings || (i / 1000 < rollOff.shoulderStart && value <= before))
            return false;
          before = value;
        }
        return true;
      }),
      { seed },
    ));

  it('keeps all light below 1 when there is a shoulder, and ends at it', () =>
    fc.assert(
      fc.property(rollOffs, light, (rollOff, x) => {
        if (rollOff.shoulderSoftness === 0) return true;
        return rollOffCurve(rollOff)(x) <= 1 + roundings;
      }),
      { seed, numRuns: 2000 },
    ));

  it.each([
    [1e-300, 1],
    [0.003, 1],
    [0.01, 1],
    [0.3, 1],
    [1, 1],
  ])('of softness %s sends endless light to %s', (shoulderSoftness, end) => {
    const curve = rollOffCurve({ shoulderStart: 0.7, shoulderSoftness, toe: 0 });
    for (const x of [1e9, 1e300, Number.MAX_VALUE]) expect(Math.abs(curve(x) - end)).toBeLessThan(1e-6);
  });

  it('is the identity without shoulder and toe, beyond film too', () => {
    const curve = rollOffCurve({ shoulderStart: 0.7, shoulderSoftness: 0, toe: 0 });
    for (const x of [-1, 0, 0.2, 0.7, 0.99, 1, 3]) expect(curve(x)).toBe(x);
  });

  it('is the identity between toe and shoulder', () => {
    const curve = rollOffCurve({ shoulderStart: 0.8, shoulderSoftness: 0.6, toe: 1 });
    // Ten times the reach of the toe up, e^-10 of its hold is left.
    for (const x of [0.2, 0.5, 0.8]) expect(Math.abs(curve(x) - x)).toBeLessThan(x * 1.01 * Math.exp(-10));
  });

  it.each([0.1, 0.35, 0.7, 1])(
    'leaves the straight line without a kink at the shoulder, softness %s',
    (shoulderSoftness) => {
      const curve = rollOffCurve({ shoulderStart: 0.6, shoulderSoftness, toe: 0 });
      const slope = (x: number) => (curve(x + 1e-7) - curve(x - 1e-7)) / 2e-7;
      expect(Math.abs(slope(0.6) - 1)).toBeLessThan(1e-5);
      expect(Math.abs(slope(0.6001) - 1)).toBeLessThan(1e-3);
    },
  );

  it('leaves more of the highlights open the softer it is, and white below 1', () => {
    const white = (shoulderSoftness: number) =>
      rollOffCurve({ shoulderStart: 0.7, shoulderSoftness, toe: 0 })(1);
    expect(white(0.1)).toBeGreaterThan(white(0.5));
    expect(white(0.5)).toBeGreaterThan(white(1));
    expect(white(1)).toBeGreaterThan(0.7);
    expect(white(0.1)).toBeLessThan(1);
  });

  it('settles the deepest shadows: the toe takes the slope at black by its share', () => {
    for (const toe of [0, 0.3, 1]) {
      const curve = rollOffCurve({ shoulderStart: 0.7, shoulderSoftness: 0.3, toe });
      expect(curve(0)).toBe(0);
      expect(Math.abs(curve(1e-9) / 1e-9 - (1 - toe))).toBeLessThan(1e-6);
      expect(Math.abs(curve(-1e-9) / -1e-9 - (1 - toe))).toBeLessThan(1e-6);
    }
  });
});

describe('a roll-off of colours', () => {
  const colour = fc.tuple(light, light, light);

  it('keeps the proportions of the channels and none above 1', () =>
    fc.assert(
      fc.property(rollOffs, colour, (rollOff, given) => {
        const run = Float64Array.from(given);
        rollOffRun(rollOff)(run, 1);
        const [r, g, b] = run;
        const scale = Math.max(...given.map(Math.abs)) * Math.max(...[...run].map(Math.abs));
        const skew = Math.max(Math.abs(r * given[1] - g * given[0]), Math.abs(g * given[2] - b * given[1]));
        if (skew > roundings * Math.max(1, scale)) return false;
        return rollOff.shoulderSoftness === 0 || Math.max(r, g, b) <= 1 + roundings;
      }),
      { seed, numRuns: 2000 },
    ));

  it('goes by the highest channel, and does not step where another takes over', () => {
    const run = Float64Array.of(1, 0.2, 0.1, 0.2, 1, 0.1, 0.8, 0.8, 0.1, 0.8, 0.8 + 1e-9, 0.1);
    rollOffRun({ shoulderStart: 0.5, shoulderSoftness: 0.5, toe: 0.2 })(run, 4);
    expect(run[0]).toBeCloseTo(run[4], 12);
    expect(Math.abs(run[6] - run[9])).toBeLessThan(1e-8);
    expect(Math.abs(run[8] - run[11])).toBeLessThan(1e-8);
  });

  it('keeps black, and what is darker, finite', () => {
    const run = Float64Array.of(0, 0, 0, -1, -2, 0, -1e-300, 0, 0);
    rollOffRun({ shoulderStart: 0, shoulderSoftness: 1, toe: 1 })(run, 3);
    expect(run.every(Number.isFinite)).toBe(true);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flareRun } from '../../src/projection/flare.js';

function flared(share: number, light: number): number {
  const run = Float64Array.of(light, light, light);
  flareRun(share)(run, 1);
  return run[0];
}

describe('veiling flare', () => {
  it.each([0.002, 0.004, 0.01, 0.1])(
    'of %s of the open gate lies on black, exactly that share of white',
    (share) => {
      expect(flared(share, 0) / flared(share, 1)).toBeCloseTo(share / (1 + share), 15);
      // Of the light that was there, the rest is picture: flare over picture is the share itself.
      expect(flared(share, 0) / (flared(share, 1) - flared(share, 0))).toBeCloseTo(share, 15);
      expect(flared(share, 1)).toBeCloseTo(1, 15);
    },
  );

  it('of nothing is nothing', () => {
    for (const light of [-0.5, 0, 0.3, 1, 20]) expect(flared(0, light)).toBe(light);
  });

  it('takes the steepness of shadows, evenly: it is a straight line', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: -1, max: 2, noNaN: true }),
        fc.double({ min: -1, max: 2, noNaN: true }),
        (share, a, b) => Math.abs(flared(share, a) - flared(share, b) - (a - b) / (1 + share)) < 1e-12,
      ),
      { seed: 52 },
    ));
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { statusA } from '../../shared/check-values/densitometry.js';
import { stainSpectrum } from '../../src/film/stain.js';
import { at, statusDensity } from './status-density.js';

const share = fc.double({ min: -0.2, max: 1, noNaN: true });
/** The bands meet over 30 nm, so a filter sees a little of its neighbour: common spectral filters are no narrower. */
const neighbour = 0.05;

describe('stain', () => {
  it('is the same everywhere when it is the same in red, green and blue', () => {
    for (const value of stainSpectrum({ red: 0.3, green: 0.3, blue: 0.3 }))
      expect(Math.abs(value - 0.3)).toBeLessThan(1e-12);
  });

  it('is seen through status A filters where it was put', () => {
    const seen = (stain: { red: number; green: number; blue: number }) => {
      const spectrum = stainSpectrum(stain);
      return (['red', 'green', 'blue'] as const).map((k) =>
        statusDensity(statusA[k], (nm) => at(spectrum, nm)),
      );
    };
    const near = (given: number[], expected: number[]) =>
      given.forEach((value, k) => expect(Math.abs(value - expected[k])).toBeLessThan(neighbour));
    near(seen({ red: 1, green: 0, blue: 0 }), [1, 0, 0]);
    near(seen({ red: 0, green: 1, blue: 0 }), [0, 1, 0]);
    near(seen({ red: 0, green: 0, blue: 1 }), [0, 0, 1]);
    near(seen({ red: 0.01, green: 0.05, blue: 0.2 }), [0.01, 0.05, 0.2]);
  });

  it('lies between its least and its most, and is linear in each', () =>
    fc.assert(
      fc.property(share, share, share, (red, green, blue) => {
        const spectrum = stainSpectrum({ red, green, blue });
        const parts = [
          stainSpectrum({ red, green: 0, blue: 0 }),
          stainSpectrum({ red: 0, green, blue: 0 }),
          stainSpectrum({ red: 0, green: 0, blue }),
        ];
        return spectrum.every(
          (value, i) =>
            value >= Math.min(red, green, blue) - 1e-12 &&
            value <= Math.max(red, green, blue) + 1e-12 &&
            Math.abs(value - parts[0][i] - parts[1][i] - parts[2][i]) < 1e-12,
        );
      }),
      { seed: 42 },
    ));
});

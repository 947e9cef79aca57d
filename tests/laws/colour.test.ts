import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cat16 } from '../../src/colour/adaptation.js';
import { correlatedColourTemperature, xyzOfXy } from '../../src/colour/chromaticity.js';
import { ciede2000, labOfXyz } from '../../src/colour/difference.js';
import { planck } from '../../src/colour/illuminants/planck.js';
import { xyzOf, xyzOfTransmittance } from '../../src/colour/observer.js';
import { customPrimaries } from '../../src/colour/primaries/custom-primaries.js';
import { rgbToRgb } from '../../src/colour/primaries/rgb-matrix.js';
import { fromFull, toFull } from '../../src/colour/signal-range.js';
import { grid } from '../../src/colour/spectrum.js';
import { identity3, multiply3, transform3, type Triple } from '../../src/maths/matrix3.js';
import { inverse } from '../tolerances.js';

const seed = 1931;
const check = <T>(arbitrary: fc.Arbitrary<T>, law: (value: T) => void) =>
  fc.assert(fc.property(arbitrary, law), { seed, numRuns: 300 });

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spectrum = fc
  .array(between(0, 2), { minLength: grid.count, maxLength: grid.count })
  .map((values) => Float64Array.from(values));
const lab = fc.tuple(between(0, 100), between(-150, 150), between(-150, 150));
/** Whites from candle to blue sky, so that no cone is left without light. */
const white = fc.tuple(between(0.25, 0.5), between(0.27, 0.42)).map((xy) => xyzOfXy(xy));

const expectNear = (given: readonly number[], expected: readonly number[], tolerance: number) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThanOrEqual(tolerance));

describe('observer', () => {
  it('adds lights and scales with them', () => {
    check(fc.tuple(spectrum, spectrum, between(0, 10)), ([one, two, share]) => {
      const sum = xyzOf(one.map((power, i) => power + share * two[i]));
      const parts = xyzOf(one).map((value, i) => value + share * xyzOf(two)[i]);
      expectNear(sum, parts, 1e-13 * 22 * 22);
    });
  });

  it('sees no film brighter than its light', () => {
    check(fc.tuple(spectrum, between(1500, 10000)), ([values, kelvin]) => {
      const transmittance = values.map((value) => value / 2);
      const [, y] = xyzOfTransmittance(transmittance, planck(kelvin));
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(1);
    });
  });
});

describe('Planck radiators', () => {
  it('grow bluer with temperature and are found again', () => {
    check(fc.tuple(between(1100, 20000), between(1.001, 1.5)), ([kelvin, hotter]) => {
      const [cool, hot] = [xyzOf(planck(kelvin)), xyzOf(planck(kelvin * hotter))];
      expect(hot[2] / hot[0]).toBeGreaterThan(cool[2] / cool[0]);
      expect(Math.abs(correlatedColourTemperature(cool).kelvin / kelvin - 1)).toBeLessThan(1e-7);
    });
  });
});

describe('CAT16', () => {
  it('sends white to white at full degree, and back', () => {
    check(fc.tuple(white, white), ([from, to]) => {
      expectNear(transform3(cat16(from, to), from), to, inverse);
      expectNear(multiply3(cat16(to, from), cat16(from, to)), identity3, inverse);
    });
  });

  it('between, goes a share of the way: the matrix is linear in the degree', () => {
    check(fc.tuple(white, white, between(0, 1)), ([from, to, degree]) => {
      const full = cat16(from, to);
      const mixed = identity3.map((one, i) => (1 - degree) * one + degree * full[i]);
      expectNear(cat16(from, to, degree), mixed, inverse);
    });
  });
});

describe('primaries', () => {
  const corner = (x: number, y: number) => fc.tuple(between(x - 0.05, x + 0.05), between(y - 0.05, y + 0.05));
  const set = fc
    .record({
      red: corner(0.68, 0.31),
      green: corner(0.22, 0.72),
      blue: corner(0.14, 0.06),
      white: corner(0.31, 0.33),
    })
    .map((chromaticities) => customPrimaries(chromaticities));

  it('lead to each other and back, by way of a third as well', () => {
    check(fc.tuple(set, set, set), ([a, b, c]) => {
      expectNear(multiply3(rgbToRgb(b, a), rgbToRgb(a, b)), identity3, 1e-11);
      expectNear(transform3(rgbToRgb(a, b), [1, 1, 1]), [1, 1, 1], inverse);
      expectNear(transform3(multiply3(rgbToRgb(b, c), rgbToRgb(a, b)), [1, 1, 1]), [1, 1, 1], 1e-11);
    });
  });
});

describe('CIEDE2000', () => {
  it('is the same from either side, never negative, and 0 from a colour to itself', () => {
    check(fc.tuple(lab, lab), ([a, b]) => {
      const there = ciede2000(a, b);
      expect(there).toBeGreaterThanOrEqual(0);
      expect(Math.abs(there - ciede2000(b, a))).toBeLessThan(1e-10);
      expect(ciede2000(a, a)).toBe(0);
    });
  });

  it('is the same from either side for hues exactly opposite', () => {
    check(fc.tuple(between(0, 100), between(-100, 100), between(-100, 100)), ([l, a, b]) => {
      const [one, two]: Triple[] = [
        [l, a, b],
        [l, -a, -b],
      ];
      expect(Math.abs(ciede2000(one, two) - ciede2000(two, one))).toBeLessThan(1e-10);
    });
  });
});

describe('CIELAB', () => {
  it('has no colour for any grey, and lightness that rises', () => {
    check(fc.tuple(white, between(0, 1), between(1e-6, 1)), ([[x, y, z], level, more]) => {
      const [l, a, b] = labOfXyz([x * level, y * level, z * level], [x, y, z]);
      expectNear([a, b], [0, 0], 1e-11);
      expect(labOfXyz([x, y * (level + more), z], [x, y, z])[0]).toBeGreaterThan(l);
    });
  });
});

describe('signal range', () => {
  it('comes off and goes on', () => {
    check(fc.tuple(between(-2, 2), fc.constantFrom('full' as const, 'legal' as const)), ([signal, range]) => {
      expect(Math.abs(toFull(fromFull(signal, range), range) - signal)).toBeLessThan(inverse);
    });
  });
});

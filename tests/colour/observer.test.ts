import { describe, expect, it } from 'vitest';
import { illuminants } from '../../src/colour/illuminants/index.js';
import { observer, xyzOf, xyzOfTransmittance } from '../../src/colour/observer.js';
import { fromFunction } from '../../src/colour/spectrum.js';
import { printed } from '../tolerances.js';

describe('observer', () => {
  // Sums of the 5 nm table, 6 decimals (CIE 15:2004, table T.4).
  it('has the sums of the published table', () => {
    const sums = xyzOf(fromFunction(() => 1));
    [21.371525, 21.371328, 21.37154].forEach((sum, i) =>
      expect(Math.abs(sums[i] - sum)).toBeLessThan(10 * printed(6)),
    );
  });

  it('sees most at 555 nm, where ybar is 1 (ISO/CIE 11664-1)', () => {
    expect(observer.y[35]).toBe(1);
    expect(Math.max(...observer.y)).toBe(1);
  });
});

describe('xyzOfTransmittance', () => {
  const { a } = illuminants;

  it('has Y = 1 for the light alone, and the transmittance for a neutral filter', () => {
    expect(
      xyzOfTransmittance(
        fromFunction(() => 1),
        a.spectrum,
      )[1],
    ).toBe(1);
    expect(
      xyzOfTransmittance(
        fromFunction(() => 0.25),
        a.spectrum,
      )[1],
    ).toBeCloseTo(0.25, 14);
    expect(
      xyzOfTransmittance(
        fromFunction(() => 0),
        a.spectrum,
      ),
    ).toEqual([0, 0, 0]);
  });

  it('adds up: two filters of complementary transmittance give the light', () => {
    const half = fromFunction((nm) => (nm < 550 ? 0.9 : 0.2));
    const rest = half.map((share) => 1 - share);
    const [one, two] = [half, rest].map((filter) => xyzOfTransmittance(filter, a.spectrum));
    const whole = xyzOfTransmittance(
      fromFunction(() => 1),
      a.spectrum,
    );
    whole.forEach((value, i) => expect(one[i] + two[i]).toBeCloseTo(value, 13));
  });

  it('does not depend on how strong the light is', () => {
    const filter = fromFunction((nm) => nm / 1000);
    const [x, y, z] = xyzOfTransmittance(
      filter,
      a.spectrum.map((power) => 1e-9 * power),
    );
    expect(x).toBeCloseTo(xyzOfTransmittance(filter, a.spectrum)[0], 13);
    expect(y).toBeCloseTo(xyzOfTransmittance(filter, a.spectrum)[1], 13);
    expect(z).toBeCloseTo(xyzOfTransmittance(filter, a.spectrum)[2], 13);
  });
});

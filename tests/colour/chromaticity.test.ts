import { describe, expect, it } from 'vitest';
import { colourTemperatureRows, ohnoRow, planckRows } from '../../shared/check-values/lights.js';
import {
  correlatedColourTemperature,
  uv1960OfXyz,
  uvPrimeOfXyz,
  xyOfXyz,
  xyzOfXy,
} from '../../src/colour/chromaticity.js';
import { planck } from '../../src/colour/illuminants/planck.js';
import { xyzOf } from '../../src/colour/observer.js';
import {
  colourTemperatureFarKelvin,
  colourTemperatureKelvin,
  duv as duvTolerance,
  inverse,
} from '../tolerances.js';

describe('chromaticity', () => {
  it('goes to XYZ and back', () => {
    const xyz = xyzOfXy([0.3127, 0.329], 0.18);
    expect(xyz[1]).toBe(0.18);
    expect(xyOfXyz(xyz)[0]).toBeCloseTo(0.3127, 14);
    expect(xyOfXyz(xyz)[1]).toBeCloseTo(0.329, 14);
  });

  // The definitions in x y: u' = 4x / (-2x + 12y + 3), v' = 9y / (...) (ISO/CIE 11664-5:2016); v = 2/3 v' (CIE 1960).
  it("gives u' v' and u v as defined from x y", () => {
    const [x, y] = [0.44757, 0.40745];
    const denominator = -2 * x + 12 * y + 3;
    const xyz = xyzOfXy([x, y], 37);
    expect(uvPrimeOfXyz(xyz)[0]).toBeCloseTo((4 * x) / denominator, 14);
    expect(uvPrimeOfXyz(xyz)[1]).toBeCloseTo((9 * y) / denominator, 14);
    expect(uv1960OfXyz(xyz)[0]).toBeCloseTo((4 * x) / denominator, 14);
    expect(uv1960OfXyz(xyz)[1]).toBeCloseTo((6 * y) / denominator, 14);
  });

  it('has none for black', () => {
    expect(xyOfXyz([0, 0, 0])).toEqual([NaN, NaN]);
  });
});

/**
 * How far our locus, summed from 380 to 780 nm, lies from one summed from 360 to 830 nm, in mired at a temperature:
 * read off the published chromaticities of the latter, linear between their rows.
 */
function locusShift(kelvin: number): number {
  const shifts = planckRows.map((row) => {
    const found = 1e6 / correlatedColourTemperature(xyzOfXy(row.xy)).kelvin;
    return { mired: 1e6 / row.kelvin, shift: found - 1e6 / row.kelvin };
  });
  const above = shifts.findIndex(({ mired }) => mired <= 1e6 / kelvin);
  const [a, b] = [shifts[above - 1], shifts[above]];
  return a.shift + ((1e6 / kelvin - a.mired) / (b.mired - a.mired)) * (b.shift - a.shift);
}

describe('correlated colour temperature', () => {
  it.each(planckRows)('of a Planck radiator of $kelvin K is its own', ({ kelvin }) => {
    const found = correlatedColourTemperature(xyzOf(planck(kelvin)));
    expect(found.kelvin / kelvin).toBeCloseTo(1, 9);
    expect(Math.abs(found.duv)).toBeLessThan(inverse);
  });

  it.each(colourTemperatureRows)('of $name is the published one', ({ xy, kelvin, duv }) => {
    const found = correlatedColourTemperature(xyzOfXy(xy, 100));
    const unshifted = 1e6 / (1e6 / found.kelvin - locusShift(kelvin));
    const tolerance = Math.abs(duv) > 0.01 ? colourTemperatureFarKelvin : colourTemperatureKelvin;
    expect(Math.abs(unshifted - kelvin)).toBeLessThan(tolerance);
    expect(Math.abs(found.duv - duv)).toBeLessThan(duvTolerance);
  });

  it('of the worked example of Ohno 2014 is the published one', () => {
    const [u, v] = ohnoRow.uv;
    const y = (2 * v) / (2 * u - 8 * v + 4);
    const found = correlatedColourTemperature(xyzOfXy([(1.5 * u * y) / v, y]));
    // The example was made with its own c2: temperatures follow it in proportion.
    const rescaled = found.kelvin * (ohnoRow.c2 / 0.01438776877);
    const unshifted = 1e6 / (1e6 / rescaled - locusShift(ohnoRow.kelvin));
    expect(Math.abs(unshifted - ohnoRow.kelvin)).toBeLessThan(colourTemperatureKelvin);
    expect(Math.abs(found.duv - ohnoRow.duv)).toBeLessThan(duvTolerance);
  });

  it('is the nearest of all temperatures, found by trying them', () => {
    for (const xy of [
      [0.4, 0.42],
      [0.5, 0.4],
      [0.29, 0.28],
      [0.34, 0.38],
    ] as const) {
      const [u, v] = uv1960OfXyz(xyzOfXy(xy));
      const distance = (kelvin: number) => {
        const [lu, lv] = uv1960OfXyz(xyzOf(planck(kelvin)));
        return Math.hypot(u - lu, v - lv);
      };
      const found = correlatedColourTemperature(xyzOfXy(xy));
      expect(Math.abs(found.duv)).toBeCloseTo(distance(found.kelvin), 12);
      for (let kelvin = 1000; kelvin < 30000; kelvin *= 1.003)
        expect(distance(kelvin)).toBeGreaterThanOrEqual(Math.abs(found.duv) - 1e-14);
    }
  });

  it('has a greenish side above and a pinkish side below', () => {
    expect(correlatedColourTemperature(xyzOfXy([0.44, 0.43])).duv).toBeGreaterThan(0);
    expect(correlatedColourTemperature(xyzOfXy([0.44, 0.38])).duv).toBeLessThan(0);
  });

  it('has none for black or for what is no number', () => {
    expect(correlatedColourTemperature([0, 0, 0])).toEqual({ kelvin: NaN, duv: NaN });
    expect(correlatedColourTemperature([NaN, 1, 1])).toEqual({ kelvin: NaN, duv: NaN });
  });
});

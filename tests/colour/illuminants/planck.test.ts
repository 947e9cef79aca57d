import { describe, expect, it } from 'vitest';
import { planckRows } from '../../../shared/check-values/lights.js';
import { illuminantATable } from '../../../shared/tables/illuminant-a.js';
import { InputError } from '../../../src/errors/input-error.js';
import { xyOfXyz } from '../../../src/colour/chromaticity.js';
import { illuminants } from '../../../src/colour/illuminants/index.js';
import { planck } from '../../../src/colour/illuminants/planck.js';
import { xyzOf } from '../../../src/colour/observer.js';
import { planckOneNm, printed, spectralTable } from '../../tolerances.js';

describe('planck', () => {
  it.each(planckRows)('$kelvin K has the chromaticity of tables of 5 nm', ({ kelvin, xyFiveNm }) => {
    const xy = xyOfXyz(xyzOf(planck(kelvin)));
    xyFiveNm.forEach((value, i) => expect(Math.abs(xy[i] - value)).toBeLessThan(printed(6)));
  });

  it.each(planckRows)(
    '$kelvin K lies near the chromaticity of tables of 1 nm',
    ({ kelvin, xy: published }) => {
      const xy = xyOfXyz(xyzOf(planck(kelvin)));
      published.forEach((value, i) => expect(Math.abs(xy[i] - value)).toBeLessThan(planckOneNm));
    },
  );

  it('gives the table of illuminant A (ISO 11664-2:2007)', () => {
    illuminantATable.values.forEach((value, i) =>
      expect(Math.abs(illuminants.a.spectrum[i] - value)).toBeLessThan(spectralTable),
    );
  });

  it('follows Wien where it is cold and Rayleigh and Jeans where it is hot', () => {
    const [c2, nm, reference] = [0.01438776877, 760, 560];
    const wien = (kelvin: number) =>
      100 * (reference / nm) ** 5 * Math.exp((c2 / kelvin) * (1e9 / reference - 1e9 / nm));
    expect(planck(300)[76] / wien(300)).toBeCloseTo(1, 12);
    expect(planck(1e9)[76] / (100 * (reference / nm) ** 4)).toBeCloseTo(1, 4);
  });

  it('stays finite from 100 K to 1e308 K', () => {
    for (const kelvin of [100, 1000, 1e6, 1e9, 1e308])
      expect(planck(kelvin).every(Number.isFinite)).toBe(true);
  });

  it.each([0, 99, -3200, NaN, Infinity])('refuses %s K', (kelvin) => {
    expect(() => planck(kelvin)).toThrow(InputError);
  });
});

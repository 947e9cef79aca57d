import { describe, expect, it } from 'vitest';
import { daylightTables } from '../../../shared/check-values/lights.js';
import { illuminantD65Table } from '../../../shared/tables/illuminant-d65.js';
import { InputError } from '../../../src/errors/input-error.js';
import { correlatedColourTemperature, xyOfXyz } from '../../../src/colour/chromaticity.js';
import {
  daylight,
  daylightChromaticity,
  standardDaylight,
} from '../../../src/colour/illuminants/daylight.js';
import { illuminants } from '../../../src/colour/illuminants/index.js';
import { xyzOf } from '../../../src/colour/observer.js';
import { daylightFormula, spectralTable } from '../../tolerances.js';

const expectSpectrum = (given: Float64Array, table: readonly number[]) =>
  table.forEach((value, i) => expect(Math.abs(given[i] - value)).toBeLessThan(spectralTable));

describe('standard daylight', () => {
  it('gives the table of D65 (ISO 11664-2:2007)', () => {
    expectSpectrum(standardDaylight(6500).spectrum, illuminantD65Table.values);
  });

  it('gives the tables of D50 and D55 (CIE 15:2004)', () => {
    expectSpectrum(illuminants.d50.spectrum, daylightTables.d50);
    expectSpectrum(illuminants.d55.spectrum, daylightTables.d55);
  });
});

describe('daylight', () => {
  it.each([4000, 5000, 5600, 7000, 7001, 10000, 25000])(
    '%s K has the chromaticity of its formula',
    (kelvin) => {
      const xy = xyOfXyz(xyzOf(daylight(kelvin)));
      daylightChromaticity(kelvin).forEach((value, i) =>
        expect(Math.abs(xy[i] - value)).toBeLessThan(daylightFormula),
      );
    },
  );

  it.each([4000, 5000, 6504, 7500, 10000])(
    '%s K is near that temperature and on the green side',
    (kelvin) => {
      const found = correlatedColourTemperature(xyzOf(daylight(kelvin)));
      expect(Math.abs(found.kelvin / kelvin - 1)).toBeLessThan(0.004);
      expect(found.duv).toBeGreaterThan(0.001);
    },
  );

  it('has no leap where its two polynomials meet', () => {
    const [below, above] = [daylight(7000), daylight(7000.01)];
    below.forEach((value, i) => expect(Math.abs(above[i] - value)).toBeLessThan(0.2));
  });

  it.each([3999, 25001, NaN, -Infinity])('refuses %s K', (kelvin) => {
    expect(() => daylight(kelvin)).toThrow(InputError);
  });
});

import { describe, expect, it } from 'vitest';
import { fromFunction, wavelengthNm } from '../../src/colour/spectrum.js';
import { behindHeatFilter, heatFilter } from '../../src/projection/heat-filter.js';

describe('the heat filter', () => {
  it('lets through a share of every wavelength, less and less towards the infrared', () => {
    heatFilter.forEach((value, i) => {
      expect(value).toBeGreaterThan(0);
      expect(value).toBeLessThan(1);
      expect(value).toBeLessThanOrEqual(heatFilter[i - 1] ?? 1);
    });
  });

  it('is clear in blue and green and a third at the edge of sight', () => {
    heatFilter.forEach((value, i) => {
      if (wavelengthNm(i) <= 560) expect(value).toBeGreaterThan(0.89);
    });
    expect(heatFilter[80]).toBeCloseTo(1 / 3, 1);
  });

  it('multiplies a light', () => {
    const behind = behindHeatFilter(fromFunction((nm) => nm));
    behind.forEach((value, i) => expect(value).toBe(heatFilter[i] * wavelengthNm(i)));
  });
});

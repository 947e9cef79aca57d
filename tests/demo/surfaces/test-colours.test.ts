import { describe, expect, it } from 'vitest';
import { cieTestColours } from '../../../shared/demo/cie-test-colours.js';
import { xyOfXyz } from '../../../src/colour/chromaticity.js';
import { illuminants } from '../../../src/colour/illuminants/index.js';
import { xyzOfTransmittance } from '../../../src/colour/observer.js';
import { resampleToGrid } from '../../../src/colour/spectrum.js';

/** The table prints five decimals of x and y; tables of the lights rounded to four to six digits move the last but one. */
const chromaticity = 2e-5;
/** Luminance factor of a perfect white 100, printed to three decimals. */
const luminance = 0.005;

describe('the CIE test colour samples', () => {
  const { startNm, stepNm, samples } = cieTestColours;

  it.each(Object.entries(samples))('%s has the published colour under A and D65', (_name, sample) => {
    const spectrum = resampleToGrid(startNm, stepNm, sample.reflectance);
    expect(sample.reflectance.length).toBe(81);
    for (const light of ['a', 'd65'] as const) {
      const xyz = xyzOfTransmittance(spectrum, illuminants[light].spectrum);
      const [x, y] = xyOfXyz(xyz);
      expect(Math.abs(x - sample[light].xy[0])).toBeLessThanOrEqual(chromaticity);
      expect(Math.abs(y - sample[light].xy[1])).toBeLessThanOrEqual(chromaticity);
      expect(Math.abs(100 * xyz[1] - sample[light].Y)).toBeLessThanOrEqual(luminance);
    }
  });
});

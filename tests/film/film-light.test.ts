import { describe, expect, it } from 'vitest';
import { xyOfXyz } from '../../src/colour/chromaticity.js';
import { illuminants } from '../../src/colour/illuminants/index.js';
import { planck } from '../../src/colour/illuminants/planck.js';
import { observer, xyzOf } from '../../src/colour/observer.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { fromFunction } from '../../src/colour/spectrum.js';
import { filmLight, filmWavelengths, showsColours } from '../../src/film/film-light.js';
import { transform3 } from '../../src/maths/matrix3.js';

const lights = { ...illuminants, candle: { spectrum: planck(1900) }, arc: { spectrum: planck(12000) } };

describe.each(Object.entries(lights))('light %s behind film', (_, { spectrum }) => {
  const light = filmLight(spectrum);

  it('is 1 1 1 without film', () => {
    for (const channel of [light.red, light.green, light.blue])
      expect(Math.abs(channel.reduce((sum, value) => sum + value, 0) - 1)).toBeLessThan(1e-12);
  });

  it('has the open gate that the whole spectrum has, luminance 1', () => {
    const xyz = transform3(rgbToXyz(primaries.bt2020), light.openGate);
    expect(Math.abs(xyz[1] - 1)).toBeLessThan(1e-12);
    // The light beyond 730 nm, of which the observer sees up to 0.04 %.
    const [x, y] = xyOfXyz(xyz);
    const [wholeX, wholeY] = xyOfXyz(xyzOf(spectrum));
    expect(Math.abs(x - wholeX)).toBeLessThan(2e-4);
    expect(Math.abs(y - wholeY)).toBeLessThan(2e-4);
  });

  it('loses less than 0.04 % of luminance and 0.1 % of X to the end at 730 nm', () => {
    const seen = (curve: Float64Array, end: number) =>
      curve.slice(0, end).reduce((sum, value, i) => sum + value * spectrum[i], 0);
    for (const [curve, share] of [
      [observer.y, 4e-4],
      [observer.x, 1e-3],
    ] as const)
      expect(1 - seen(curve, filmWavelengths) / seen(curve, 81)).toBeLessThan(share);
  });
});

describe('a light without some colour', () => {
  it.each([
    ['sodium', (nm: number) => (Math.abs(nm - 590) < 3 ? 1 : 0)],
    ['a red darkroom lamp', (nm: number) => (nm > 640 ? 1 : 0)],
    ['nothing', () => 0],
    ['infrared only', (nm: number) => (nm > 760 ? 1 : 0)],
  ])('shows no colours of film: %s', (_, power) =>
    expect(showsColours(filmLight(fromFunction(power)))).toBe(false),
  );

  it('is no lamp, candle or day', () => {
    for (const { spectrum } of Object.values(lights)) expect(showsColours(filmLight(spectrum))).toBe(true);
    expect(showsColours(filmLight(planck(1500)))).toBe(true);
  });
});

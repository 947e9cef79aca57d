import { describe, expect, it } from 'vitest';
import { heatFilterRiseKelvin, lampKelvins } from '../../shared/check-values/projection.js';
import { correlatedColourTemperature, xyOfXyz } from '../../src/colour/chromaticity.js';
import { xyzOf } from '../../src/colour/observer.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { grid } from '../../src/colour/spectrum.js';
import { filmLight, showsColours } from '../../src/film/film-light.js';
import { transform3 } from '../../src/maths/matrix3.js';
import { behindHeatFilter } from '../../src/projection/heat-filter.js';
import { lamps } from '../../src/projection/lamps/index.js';
import { lampAsSeen } from '../../src/projection/viewing.js';
import { whiteChromaticity } from '../tolerances.js';

/**
 * Illuminant A is 2855.5 K with today's radiation constant where 2856 K is its name, D65 6504 K; daylight of 5600 K lies
 * off the Planck locus, which its definition in old kelvins moves by 0.05 %.
 */
const statedKelvin = 0.6;

describe.each(Object.entries(lamps))('%s', (name, { title, source, kelvin, spectrum }) => {
  it('has a title, a source and a known kind', () => {
    expect(title).not.toBe('');
    expect(source).not.toBe('');
    expect(lampKelvins[name], 'a range for its kind').toBeDefined();
  });

  it('is positive and finite on the grid', () => {
    expect(spectrum).toHaveLength(grid.count);
    expect(Math.min(...spectrum)).toBeGreaterThan(0);
    expect(Math.max(...spectrum)).toBeLessThan(Infinity);
    expect(showsColours(filmLight(spectrum))).toBe(true);
  });

  it('has the colour temperature it states, one of its kind', () => {
    const found = correlatedColourTemperature(xyzOf(spectrum));
    expect(Math.abs(found.kelvin - kelvin)).toBeLessThan(statedKelvin);
    // A white light: near the Planck locus, as lamps for projection are.
    expect(Math.abs(found.duv)).toBeLessThan(0.006);
    const [least, most] = lampKelvins[name];
    expect(kelvin).toBeGreaterThanOrEqual(least);
    expect(kelvin).toBeLessThanOrEqual(most);
  });

  it('has its white at the open gate: unadapted, the screen shows the lamp', () => {
    const seen = lampAsSeen(filmLight(spectrum).openGate, 0);
    const [x, y] = xyOfXyz(transform3(rgbToXyz(primaries.bt2020), transform3(seen, [1, 1, 1])));
    const [lampX, lampY] = xyOfXyz(xyzOf(spectrum));
    // The film's light ends at 730 nm.
    expect(Math.abs(x - lampX)).toBeLessThan(2e-4);
    expect(Math.abs(y - lampY)).toBeLessThan(2e-4);
  });

  it('is neutral on the screen to an eye that has adapted to it', () => {
    const white = transform3(lampAsSeen(filmLight(spectrum).openGate, 1), [1, 1, 1]);
    white.forEach((value) => expect(Math.abs(value - 1)).toBeLessThan(whiteChromaticity));
  });

  it('is colder behind the heat filter, as far as its kind is (from memory: 50 to 200 K)', () => {
    const bare = correlatedColourTemperature(xyzOf(spectrum));
    const filtered = correlatedColourTemperature(xyzOf(behindHeatFilter(spectrum)));
    const rise = filtered.kelvin - bare.kelvin;
    process.stdout.write(
      `${name}: the heat filter raises ${bare.kelvin.toFixed(0)} K by ${rise.toFixed(0)} K\n`,
    );
    expect(rise).toBeGreaterThan(heatFilterRiseKelvin[0]);
    // The range is meant for incandescent lamps; in mired it is that of 3000 K, whatever the lamp.
    const mired = 1e6 / bare.kelvin - 1e6 / filtered.kelvin;
    expect(mired).toBeLessThan(1e6 / 3000 - 1e6 / (3000 + heatFilterRiseKelvin[1]));
    if (kelvin < 4000) expect(rise).toBeLessThan(heatFilterRiseKelvin[1]);
  });
});

it('no figures lie about for lamps that are not there', () =>
  expect(Object.keys(lampKelvins).sort()).toEqual(Object.keys(lamps).sort()));

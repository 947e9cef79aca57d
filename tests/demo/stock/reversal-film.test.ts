import { describe, expect, it } from 'vitest';
import { reflectances } from '../../../shared/demo/reflectances/index.js';
import { type DemoAgeName, demoAges } from '../../../src/demo/stock/ages.js';
import { densityAt } from '../../../src/demo/stock/characteristic.js';
import {
  characteristic,
  filmAndCamera,
  leastLogExposure,
  mostLogExposure,
  type ReversalStock,
} from '../../../src/demo/stock/reversal-film.js';
import { sceneLight } from '../../../src/demo/surfaces/light.js';
import { paletteUnder } from '../../../src/demo/surfaces/palette.js';
import { lit, reflectance } from '../../../src/demo/surfaces/surface.js';

/** Codes of a grey differ by less than this: a quarter of an 8-bit code, which no one sees or measures. */
const neutral = 0.25 / 255;

const names: readonly ReversalStock[] = ['reversal-early', 'reversal-late'];
const exposures = Array.from(
  { length: 69 },
  (_, i) => leastLogExposure + (i / 68) * (mostLogExposure - leastLogExposure),
);

/** Codes of a grey at each exposure, r g b r g b ... */
function greys(dyes: ReversalStock, age: DemoAgeName): Float64Array {
  const run = Float64Array.from(exposures.flatMap((e) => [e, e, e]));
  filmAndCamera(dyes, demoAges[age])(run, exposures.length);
  return run;
}

/** The codes of the first grey exposed at least so much. */
function greyAt(codes: Float64Array, exposure: number): number[] {
  const i = exposures.findIndex((e) => e >= exposure);
  return [...codes.subarray(3 * i, 3 * i + 3)];
}

describe('the characteristic curve', () => {
  it('falls, between its least and its most density', () => {
    const { least, most } = characteristic;
    const densities = [-30, ...exposures, 30].map((e) => densityAt(characteristic, e));
    expect(densities[0]).toBeCloseTo(most, 9);
    expect(densities.at(-1)).toBeCloseTo(least, 9);
    densities.reduce((higher, lower) => {
      expect(lower).toBeLessThanOrEqual(higher);
      return lower;
    });
  });

  it('has the stated contrast on its straight part', () => {
    const slope = (densityAt(characteristic, -1.2) - densityAt(characteristic, -1)) / 0.2;
    expect(slope).toBeGreaterThan(0.98 * characteristic.contrast);
    expect(slope).toBeLessThanOrEqual(characteristic.contrast);
  });
});

describe.each(names)('film of %s dyes before the camera', (dyes) => {
  it('shows every grey neutral in good order, and brighter with more exposure', () => {
    const codes = greys(dyes, 'in-good-order');
    for (let i = 0; i < codes.length; i += 3) {
      const [r, g, b] = codes.subarray(i, i + 3);
      expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThan(neutral);
      if (i > 0) expect(g).toBeGreaterThan(codes[i - 2]);
    }
    expect(codes[1]).toBeGreaterThan(0);
    expect(codes.at(-1)).toBeLessThan(1);
  });

  it('gone warm is yellow in the clear film, red to blue everywhere', () => {
    const codes = greys(dyes, 'warm');
    for (let i = 0; i < codes.length; i += 3) {
      expect(codes[i]).toBeGreaterThan(codes[i + 1]);
      expect(codes[i + 1]).toBeGreaterThan(codes[i + 2]);
    }
  });

  it('gone blue has more blue than green, more green than red, the more so the denser', () => {
    const codes = greys(dyes, 'blue-shifted');
    const dark = greyAt(codes, -1.4);
    const light = greyAt(codes, -0.3);
    for (const [r, g, b] of [dark, light]) {
      expect(g).toBeGreaterThan(r);
      expect(b).toBeGreaterThan(g);
    }
    expect(dark[2] / dark[0]).toBeGreaterThan(light[2] / light[0]);
  });

  it('gone pink has most red, the more so the denser', () => {
    const codes = greys(dyes, 'pink');
    for (let i = 0; i < codes.length; i += 3)
      expect(codes[i]).toBeGreaterThan(Math.max(codes[i + 1], codes[i + 2]));
    const dark = greyAt(codes, -1.4);
    const light = greyAt(codes, -0.3);
    expect(dark[0] / dark[1]).toBeGreaterThan(1.5 * (light[0] / light[1]));
  });
});

describe('skin on film in good order', () => {
  // Common practice: the +I axis, 123 degrees on the vectorscope, plus or minus 10 for all complexions.
  it.each(['fair', 'tanned', 'brown', 'deep'] as const)('%s lies on the skin line', (name) => {
    const palette = paletteUnder(sceneLight(5250, 10500, reflectance(reflectances.brickPale)));
    const codes = new Float64Array(3);
    lit(codes, palette[name], 0.8, 0.2, 0.1);
    for (let k = 0; k < 3; k++) codes[k] = Math.log10(codes[k]);
    filmAndCamera('reversal-late', demoAges['in-good-order'])(codes, 1);
    const [r, , b] = codes;
    // BT.709 luma weights.
    const luma = 0.2126 * r + 0.7152 * codes[1] + 0.0722 * b;
    const angle = (Math.atan2((r - luma) / 1.5748, (b - luma) / 1.8556) * 180) / Math.PI;
    expect(angle).toBeGreaterThan(113);
    expect(angle).toBeLessThan(133);
  });
});

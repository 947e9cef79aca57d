import { describe, expect, it } from 'vitest';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb } from '../../src/colour/primaries/rgb-matrix.js';
import { densityLight } from '../../src/film/density-light.js';
import { dyeModel } from '../../src/film/dye-model.js';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { filmLight } from '../../src/film/film-light.js';
import { gateLight } from '../../src/film/stock.js';
import { identity3, multiply3, transform3 } from '../../src/maths/matrix3.js';
import { lamps } from '../../src/projection/lamps/index.js';

const roundings = 1e-12;
const near = (given: readonly number[], expected: readonly number[]) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(roundings));

/** Dye amounts between clear film and the densest, on a lattice of 9. */
const amounts = Array.from({ length: 729 }, (_, i) =>
  [i % 9, Math.floor(i / 9) % 9, Math.floor(i / 81)].map((step) => 0.4 * step),
) as [number, number, number][];

describe.each(Object.entries(lamps))('densities before %s', (_, { spectrum }) => {
  const lamp = filmLight(spectrum);
  const { light, fromBt2020, toBt2020 } = densityLight(lamp);

  it('keep the open gate at 1 1 1, there and back', () => {
    near(transform3(fromBt2020, [1, 1, 1]), [1, 1, 1]);
    near(multiply3(toBt2020, fromBt2020), identity3);
  });

  it('are those of the same light: film goes the same way through either', () => {
    const { base } = dyeSets.print;
    const [wide, narrow] = [new Float64Array(3), new Float64Array(3)];
    dyeModel(dyeSets.print, base, light).light(0.9, 0.4, 1.3, wide);
    dyeModel(dyeSets.print, base, lamp).light(0.9, 0.4, 1.3, narrow);
    near(transform3(fromBt2020, [narrow[0], narrow[1], narrow[2]]), [...wide]);
  });

  it.each(Object.entries(dyeSets))('are positive for all film of %s', (_, dyes) => {
    const model = dyeModel(dyes, dyes.base, light);
    const out = new Float64Array(3);
    const least = amounts.map((triple) => {
      model.light(...triple, out);
      return Math.min(...out);
    });
    expect(Math.min(...least)).toBeGreaterThan(0);
  });
});

it.each(Object.entries(primaries))(
  'every colour of %s is positive where densities are taken',
  (_, camera) => {
    const toDensities = multiply3(densityLight(gateLight).fromBt2020, rgbToRgb(camera, primaries.bt2020));
    expect(Math.min(...toDensities)).toBeGreaterThan(0);
  },
);

it('in BT.2020 itself, deep blue film has less than no green: the reason for wider primaries', () => {
  const out = new Float64Array(3);
  dyeModel(dyeSets['reversal-early'], dyeSets['reversal-early'].base, gateLight).light(2.8, 2.8, 0, out);
  expect(out[1]).toBeLessThan(0);
});

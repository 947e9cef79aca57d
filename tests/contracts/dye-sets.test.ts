import { describe, expect, it } from 'vitest';
import { dyeRanges, statusA } from '../../shared/check-values/densitometry.js';
import { grid, wavelengthNm } from '../../src/colour/spectrum.js';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { gateLight, restoreStock } from '../../src/film/stock.js';
import { dyeModel } from '../../src/film/dye-model.js';
import { densityOf } from '../../src/film/density.js';
import { at, statusDensity } from '../film/status-density.js';

type Range = readonly [number, number];
function expectWithin(value: number, [least, most]: Range, what: string) {
  expect(value, what).toBeGreaterThanOrEqual(least);
  expect(value, what).toBeLessThanOrEqual(most);
}

describe.each(Object.entries(dyeSets))('%s', (name, dyes) => {
  const image = { cyan: dyes.cyan, magenta: dyes.magenta, yellow: dyes.yellow };
  const status = (colour: keyof typeof statusA, spectrum: Float64Array) =>
    statusDensity(statusA[colour], (nm) => at(spectrum, nm));

  it('has a title and says where its curves come from', () => {
    expect(dyes.title).not.toBe('');
    expect(dyes.source).not.toBe('');
  });

  it('has dyes with a peak of exactly 1 and never below 0, on the whole grid', () => {
    for (const spectrum of Object.values(image)) {
      expect(spectrum).toHaveLength(grid.count);
      expect(Math.max(...spectrum)).toBe(1);
      expect(Math.min(...spectrum)).toBeGreaterThanOrEqual(0);
    }
    expect(dyes.base).toHaveLength(grid.count);
    expect(Math.min(...dyes.base)).toBeGreaterThanOrEqual(0);
  });

  it('has its peaks where such dyes have them', () => {
    for (const [dye, spectrum] of Object.entries(image))
      expectWithin(
        wavelengthNm(spectrum.indexOf(1)),
        dyeRanges.peaksNm[dye as keyof typeof dyeRanges.peaksNm],
        dye,
      );
  });

  it('has unwanted absorptions as such dyes have them, by status A', () => {
    const shown = Object.entries(image).map(([dye, spectrum]) => {
      const densities = (['red', 'green', 'blue'] as const).map((colour) =>
        status(colour, spectrum).toFixed(2),
      );
      return `${dye} ${densities.join(' ')}`;
    });
    process.stdout.write(`${name}, status A of peak density 1, red green blue: ${shown.join(', ')}\n`);
    expectWithin(status('green', dyes.cyan), dyeRanges.cyanInGreenAndBlue, 'cyan in green');
    expectWithin(status('blue', dyes.cyan), dyeRanges.cyanInGreenAndBlue, 'cyan in blue');
    expectWithin(status('blue', dyes.magenta), dyeRanges.magentaInBlue, 'magenta in blue');
    expectWithin(status('red', dyes.magenta), dyeRanges.magentaInRed, 'magenta in red');
    expectWithin(status('green', dyes.yellow), dyeRanges.yellowInGreen, 'yellow in green');
    expectWithin(status('red', dyes.yellow), dyeRanges.yellowInRed, 'yellow in red');
    // The wanted absorption is the largest of each by far.
    expect(status('red', dyes.cyan)).toBeGreaterThan(2 * status('green', dyes.cyan));
    expect(status('green', dyes.magenta)).toBeGreaterThan(2 * status('blue', dyes.magenta));
    expect(status('blue', dyes.yellow)).toBeGreaterThan(2 * status('green', dyes.yellow));
  });

  it('has a clear base, a little denser in blue', () => {
    for (const colour of ['red', 'green', 'blue'] as const)
      expectWithin(status(colour, dyes.base), [dyeRanges.clear[0] - 0.02, dyeRanges.clear[1]], colour);
    expect(status('blue', dyes.base)).toBeGreaterThan(status('red', dyes.base));
  });

  it('reaches the densest film of its kind within the amounts the solver can find', () => {
    const light = new Float64Array(3);
    dyeModel(dyes, dyes.base, gateLight).light(4.4, 4.4, 4.4, light);
    expect(Math.min(...[...light].map(densityOf))).toBeGreaterThan(dyeRanges.densest[0]);
  });

  it('without loss and stain is the identity', () => {
    const same = restoreStock({
      dyes,
      loss: { cyan: 0, magenta: 0, yellow: 0 },
      stain: { red: 0, green: 0, blue: 0 },
    });
    const colours = Float64Array.from({ length: 3 * 125 }, (_, i) => ((i * 37) % 101) / 100);
    const before = colours.slice();
    same(colours, 125);
    colours.forEach((value, i) => expect(Math.abs(value - before[i])).toBeLessThan(1e-8));
  });
});

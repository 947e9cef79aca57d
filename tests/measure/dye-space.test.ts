import { describe, expect, it } from 'vitest';
import { type DyeSetName, dyeSets } from '../../src/film/dye-sets/index.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb } from '../../src/colour/primaries/rgb-matrix.js';
import { transformRun3 } from '../../src/maths/matrix3.js';
import { dyeSpace } from '../../src/measure/dye-space.js';
import { densitiesFromBt2020, filmLightOf, sceneAmounts } from './filmed.js';

/** Newton's last step leaves errors far below what a camera sees; the ends of film bend a little (dye-amounts.ts). */
const amountTolerance = 1e-3;

function amountsSeen(
  dyes: DyeSetName,
  amounts: readonly number[],
  loss: readonly [number, number, number],
): Float64Array {
  const light = filmLightOf(amounts, { dyes, loss, openGate: 1 });
  transformRun3(rgbToRgb(primaries.bt709, primaries.bt2020), light, light.length / 3);
  const run = densitiesFromBt2020(light);
  dyeSpace(dyeSets[dyes]).toAmounts(run);
  return run;
}

describe.each(Object.keys(dyeSets) as DyeSetName[])('dye space of %s', (dyes) => {
  const space = dyeSpace(dyeSets[dyes]);

  it('has a neutral of density 1 at 1 1 1', () => {
    const run = Float64Array.of(1, 1, 1);
    space.toAmounts(run);
    run.forEach((v) => expect(v).toBeCloseTo(1, 6));
  });

  it('sees fading as a factor of each dye by itself', () => {
    const amounts = sceneAmounts(5, 40).map((v) => Math.min(v, 2));
    const seen = amountsSeen(dyes, amounts, [0.5, 0.1, 0.3]);
    amounts.forEach((v, i) =>
      expect(Math.abs(seen[i] - v * [0.5, 0.9, 0.7][i % 3])).toBeLessThan(amountTolerance),
    );
  });

  it('a stain of no dye is no density, and each dye stains its own light most', () => {
    expect(space.stainDensities([0, 0, 0])).toEqual([0, 0, 0]);
    [0, 1, 2].forEach((k) => {
      const stain = space.stainDensities([
        0.1 * Number(k === 0),
        0.1 * Number(k === 1),
        0.1 * Number(k === 2),
      ]);
      expect(Math.max(...stain)).toBe(stain[k]);
    });
  });
});

import { describe, expect, it } from 'vitest';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb } from '../../src/colour/primaries/rgb-matrix.js';
import { srgb } from '../../src/colour/transfer-functions/srgb.js';
import { densityLight } from '../../src/film/density-light.js';
import { densityOf } from '../../src/film/density.js';
import { dyeAmountSolver } from '../../src/film/dye-amounts.js';
import { dyeModel } from '../../src/film/dye-model.js';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { gateLight } from '../../src/film/stock.js';
import { multiply3, transform3 } from '../../src/maths/matrix3.js';

const dyes = dyeSets['reversal-early'];
const wide = densityLight(gateLight);
const model = dyeModel(dyes, dyes.base, wide.light);
const fromCamera = multiply3(wide.fromBt2020, rgbToRgb(primaries.bt709, primaries.bt2020));

/** The same solver by two ways: the tolerance that a colour's neighbours may move its answer by. */
const sameAnswer = 1e-7;

function amountsOf(solve: ReturnType<typeof dyeAmountSolver>, densities: readonly number[]): number[] {
  const amounts = new Float64Array(3);
  solve(Float64Array.from(densities), amounts);
  return [...amounts];
}

describe('the amounts of one colour after another', () => {
  it('take one or two Newton steps along the lattice of a camera, and no more than a few at its edges', () => {
    const solve = dyeAmountSolver(model);
    const amounts = new Float64Array(3);
    const size = 33;
    let [all, most] = [0, 0];
    for (let i = 0; i < size ** 3; i++) {
      const light = transform3(fromCamera, [
        srgb.decode((i % size) / (size - 1)),
        srgb.decode((Math.floor(i / size) % size) / (size - 1)),
        srgb.decode(Math.floor(i / size ** 2) / (size - 1)),
      ]);
      const taken = solve(Float64Array.from(light, densityOf), amounts);
      all += taken;
      most = Math.max(most, taken);
    }
    process.stdout.write(`${(all / size ** 3).toFixed(2)} steps on average, ${most} at most\n`);
    expect(all / size ** 3).toBeLessThan(2);
    expect(most).toBeLessThan(15);
  });

  it.each([
    ['the same again', [0, 0, 0]],
    ['steps that no double tells apart', [1e-17, 0, 0]],
    ['steps of nearly nothing', [1e-14, -1e-13, 0]],
    ['a step, nothing, and a step', [0.01, 0, 0.01]],
    ['to and fro', [0.05, -0.05, 0.05]],
    ['ever longer steps', [0.001, 0.02, 0.2]],
    ['a colour that is none', [NaN, NaN, NaN]],
    ['light without end', [-Infinity, Infinity, 0]],
  ])('are those of the colour alone: %s', (_, steps) => {
    const solve = dyeAmountSolver(model);
    let red = 1;
    amountsOf(solve, [red, 0.8, 0.6]);
    for (const step of steps) {
      red += Number.isFinite(step) ? step : 0;
      amountsOf(solve, [Number.isFinite(step) ? red : step, 0.8, 0.6]);
      const found = amountsOf(solve, [red, 0.8, 0.6]);
      const alone = amountsOf(dyeAmountSolver(model), [red, 0.8, 0.6]);
      found.forEach((amount, k) => expect(Math.abs(amount - alone[k])).toBeLessThan(sameAnswer));
    }
  });
});

import { describe, expect, it } from 'vitest';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb } from '../../src/colour/primaries/rgb-matrix.js';
import { srgb } from '../../src/colour/transfer-functions/srgb.js';
import { densityLight } from '../../src/film/density-light.js';
import { densityOf } from '../../src/film/density.js';
import { dyeAmountSolver } from '../../src/film/dye-amounts.js';
import { type DyeModel, dyeModel } from '../../src/film/dye-model.js';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { stainSpectrum } from '../../src/film/stain.js';
import { gateLight } from '../../src/film/stock.js';
import { multiply3, transform3 } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';

/** Densities of the amounts found against those given: what a lattice of six decimals cannot tell by far. */
const density = 1e-8;
/** Amounts: the last Newton step starts within 5e-6, and deep blues tell their dyes a hundred times worse than greys. */
const amount = 1e-7;
const wide = densityLight(gateLight);
const base = stainSpectrum({ red: 0.02, green: 0.05, blue: 0.12 });
const modelOf = (name: keyof typeof dyeSets): DyeModel =>
  dyeModel(
    dyeSets[name],
    base.map((value, i) => value + dyeSets[name].base[i]),
    wide.light,
  );

function densitiesAt(model: DyeModel, amounts: ArrayLike<number>): Float64Array {
  const light = new Float64Array(3);
  model.light(amounts[0], amounts[1], amounts[2], light);
  return light.map(densityOf);
}

const distance = (a: ArrayLike<number>, b: ArrayLike<number>) =>
  Math.max(...[0, 1, 2].map((k) => Math.abs(a[k] - b[k])));

/** Every colour of a camera's cube, coarsely, as densities. */
function cubeOf(camera: (typeof primaries)[keyof typeof primaries], steps = 9): Float64Array[] {
  const matrix = multiply3(wide.fromBt2020, rgbToRgb(camera, primaries.bt2020));
  const level = (i: number) => srgb.decode((i % steps) / (steps - 1));
  return Array.from({ length: steps ** 3 }, (_, i) =>
    Float64Array.from(
      transform3(matrix, [level(i), level(Math.floor(i / steps)), level(Math.floor(i / steps ** 2))]),
      densityOf,
    ),
  );
}

function shuffled<T>(list: readonly T[], seed: number): T[] {
  const random = seededRandom(seed);
  return list
    .map((value) => [random(), value] as const)
    .sort(([a], [b]) => a - b)
    .map(([, value]) => value);
}

describe.each(Object.keys(dyeSets) as (keyof typeof dyeSets)[])('dyes %s', (name) => {
  const model = modelOf(name);

  it.each([2, 3.2])('are found again from amounts of 0 to %s', (most) => {
    const random = seededRandom(1);
    const solve = dyeAmountSolver(model);
    const found = new Float64Array(3);
    let [worst, worstDensity, steps, all] = [0, 0, 0, 0];
    for (let n = 0; n < 5000; n++) {
      const given = [most * random(), most * random(), most * random()];
      const densities = densitiesAt(model, given);
      const before = densities.slice();
      const taken = solve(densities, found);
      all += taken;
      steps = Math.max(steps, taken);
      worst = Math.max(worst, distance(given, found));
      worstDensity = Math.max(
        worstDensity,
        distance(before, densitiesAt(model, found)),
        distance(before, densities),
      );
    }
    process.stdout.write(
      `${name}, amounts to ${most}: off by ${worst.toExponential(1)}, in density ${worstDensity.toExponential(1)}, ` +
        `${(all / 5000).toFixed(2)} steps on average, ${steps} at most\n`,
    );
    expect(worstDensity).toBeLessThan(density);
    expect(worst).toBeLessThan(amount);
  });

  it.each(Object.entries(primaries))(
    'give every colour of a %s cube one answer, whatever came before',
    (_, camera) => {
      const cube = cubeOf(camera);
      const alone = cube.map((given) => {
        const [densities, amounts] = [given.slice(), new Float64Array(3)];
        // 40 steps would be a search that did not end.
        expect(dyeAmountSolver(model)(densities, amounts)).toBeLessThan(40);
        expect(distance(densities, densitiesAt(model, amounts))).toBeLessThan(density);
        return densities;
      });
      const order = cube.map((_, i) => i);
      for (const way of [order, [...order].reverse(), shuffled(order, 5)]) {
        const solve = dyeAmountSolver(model);
        for (const i of way) {
          const densities = cube[i].slice();
          solve(densities, new Float64Array(3));
          expect(distance(densities, alone[i])).toBeLessThan(1e-7);
        }
      }
    },
  );

  it('stay within what film can hold, and finite, for whatever comes', () => {
    const solve = dyeAmountSolver(model);
    const amounts = new Float64Array(3);
    const extremes = [-300, -6, -1, 0, 3, 6, 12, 300];
    for (const r of extremes)
      for (const g of extremes)
        for (const b of extremes) {
          const densities = Float64Array.of(r, g, b);
          solve(densities, amounts);
          for (const value of [...amounts, ...densities]) expect(Number.isFinite(value)).toBe(true);
          for (const value of amounts) {
            expect(value).toBeGreaterThanOrEqual(-0.5);
            expect(value).toBeLessThanOrEqual(4.5);
          }
        }
  });

  it('are not spoilt by a colour that is not a number', () => {
    const solve = dyeAmountSolver(model);
    const amounts = new Float64Array(3);
    solve(Float64Array.of(NaN, 1, 1), amounts);
    const densities = Float64Array.of(1, 1, 1);
    solve(densities, amounts);
    expect(distance(densities, [1, 1, 1])).toBeLessThan(density);
  });
});

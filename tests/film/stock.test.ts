import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000, labOfXyz } from '../../src/colour/difference.js';
import { xyzOf } from '../../src/colour/observer.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { densityLight } from '../../src/film/density-light.js';
import { densityOf } from '../../src/film/density.js';
import { dyeModel } from '../../src/film/dye-model.js';
import { type DyeSetName, dyeSets } from '../../src/film/dye-sets/index.js';
import { filmLight, filmWavelengths } from '../../src/film/film-light.js';
import { stainSpectrum } from '../../src/film/stain.js';
import {
  ageStock,
  filmGamut,
  gateLight,
  relight,
  restoreStock,
  type StockAge,
} from '../../src/film/stock.js';
import { type Run, transform3, type Triple } from '../../src/maths/matrix3.js';
import { lamps } from '../../src/projection/lamps/index.js';

const seed = 44;
const names = Object.keys(dyeSets) as DyeSetName[];
const toXyz = rgbToXyz(primaries.bt2020);
const labOf = (colour: Triple) => labOfXyz(transform3(toXyz, colour), transform3(toXyz, [1, 1, 1]));

function through(run: Run, colour: Triple): Triple {
  const values = Float64Array.from(colour);
  run(values, 1);
  return [values[0], values[1], values[2]];
}

/** Linear BT.2020 of film with these dyes before the gate light. */
function filmOf(name: DyeSetName, amounts: Triple): Triple {
  const out = new Float64Array(3);
  dyeModel(dyeSets[name], dyeSets[name].base, gateLight).light(...amounts, out);
  return [out[0], out[1], out[2]];
}

const amount = fc.double({ min: 0, max: 3, noNaN: true });
const amounts: fc.Arbitrary<Triple> = fc.tuple(amount, amount, amount);
const loss = fc.double({ min: 0, max: 0.8, noNaN: true });
const stainOf = (most: number) => fc.double({ min: 0, max: most, noNaN: true });
const age: fc.Arbitrary<Omit<StockAge, 'dyes'>> = fc.record({
  loss: fc.record({ cyan: loss, magenta: loss, yellow: loss }),
  // A few hundredths to 0.2, mostly in blue (from memory of conservation literature).
  stain: fc.record({ red: stainOf(0.05), green: stainOf(0.1), blue: stainOf(0.2) }),
});

/** A difference nobody sees; Newton's rest and the floor of light lie far below it. */
const unseen = 0.3;

describe.each(names)('stock %s', (name) => {
  it('is given back what time took, for any loss to 0.8 and any stain', () => {
    let worst = 0;
    fc.assert(
      fc.property(age, fc.array(amounts, { minLength: 10, maxLength: 10 }), (old, film) => {
        const whole = { ...old, dyes: dyeSets[name] };
        const [aged, restored] = [ageStock(whole), restoreStock(whole)];
        for (const dyes of film) {
          const fresh = filmOf(name, dyes);
          worst = Math.max(worst, ciede2000(labOf(fresh), labOf(through(restored, through(aged, fresh)))));
        }
        return worst < unseen;
      }),
      { seed },
    );
    process.stdout.write(`${name}: aged and restored, off by ${worst.toExponential(1)} CIEDE2000 at most\n`);
  });

  it('ages as the spectra say: dyes less their loss on a stained base', () =>
    fc.assert(
      fc.property(age, amounts, ({ loss, stain }, dyes) => {
        const set = dyeSets[name];
        const added = stainSpectrum(stain);
        const base = set.base.map((value, i) => value + added[i]);
        const [c, m, y] = dyes;
        const expected = new Float64Array(3);
        dyeModel(set, base, gateLight).light(
          (1 - loss.cyan) * c,
          (1 - loss.magenta) * m,
          (1 - loss.yellow) * y,
          expected,
        );
        const aged = through(ageStock({ dyes: set, loss, stain }), filmOf(name, dyes));
        // Where a colour has next to no light, the floor of density, 1e-6 of light, is left in it.
        return aged.every((value, k) => Math.abs(value - expected[k]) < 1e-6);
      }),
      { seed },
    ));

  it('without loss and stain stays as it is', () => {
    const untouched = restoreStock({
      dyes: dyeSets[name],
      loss: { cyan: 0, magenta: 0, yellow: 0 },
      stain: { red: 0, green: 0, blue: 0 },
    });
    fc.assert(
      fc.property(fc.tuple(amount, amount, amount), (given) => {
        const colour: Triple = [given[0] / 3, given[1] / 3, given[2] / 3];
        return through(untouched, colour).every((value, k) => Math.abs(value - colour[k]) < 1e-8);
      }),
      { seed },
    );
  });

  it('never corrects less when more was lost', () =>
    fc.assert(
      fc.property(
        amounts,
        fc.constantFrom('cyan', 'magenta', 'yellow' as const),
        fc.record({ cyan: loss, magenta: loss, yellow: loss }),
        loss,
        (dyes, which, losses, other) => {
          const [less, more] = [losses[which], other].sort((a, b) => a - b);
          const none = { red: 0, green: 0, blue: 0 };
          const seen = filmOf(name, [dyes[0] / 2, dyes[1] / 2, dyes[2] / 2]);
          const densities = ([less, more] as const).map((value) => {
            const restored = restoreStock({
              dyes: dyeSets[name],
              loss: { ...losses, [which]: value },
              stain: none,
            });
            return transform3(densityLight(gateLight).fromBt2020, through(restored, seen)).map(densityOf);
          });
          return densities[1].every((value, k) => value >= densities[0][k] - 1e-8);
        },
      ),
      { seed },
    ));

  it('keeps no light none, and whatever comes finite', () => {
    const restored = restoreStock({
      dyes: dyeSets[name],
      loss: { cyan: 0.9, magenta: 0.9, yellow: 0.9 },
      stain: { red: 1, green: -0.2, blue: 1 },
    });
    expect(through(restored, [0, 0, 0]).every((value) => Math.abs(value) < 1e-12)).toBe(true);
    for (const r of [-10, -1, -1e-6, 0, 1e-6, 1, 100])
      for (const g of [-1, 0, 0.5, 100])
        for (const b of [-1, 0, 1e-3, 2])
          for (const value of through(restored, [r, g, b])) expect(Number.isFinite(value)).toBe(true);
  });

  it.each(['incandescent-dim', 'tungsten-halogen', 'xenon'] as const)(
    'before %s is what its spectrum says, wavelength by wavelength',
    (lampName) => {
      const lamp = lamps[lampName].spectrum.map((value, i) => (i < filmWavelengths ? value : 0));
      const light = filmLight(lamp);
      const lit = relight(dyeSets[name], light);
      const set = dyeSets[name];
      const gate = xyzOf(lamp);
      let worst = 0;
      fc.assert(
        fc.property(amounts, ([c, m, y]) => {
          const power = lamp.map(
            (value, i) =>
              value * 10 ** -(set.base[i] + c * set.cyan[i] + m * set.magenta[i] + y * set.yellow[i]),
          );
          const expected = xyzOf(power).map((value) => value / gate[1]) as unknown as Triple;
          const balanced = through(lit, filmOf(name, [c, m, y]));
          const given = transform3(toXyz, [
            balanced[0] * light.openGate[0],
            balanced[1] * light.openGate[1],
            balanced[2] * light.openGate[2],
          ]);
          const white = gate.map((value) => value / gate[1]) as unknown as Triple;
          worst = Math.max(worst, ciede2000(labOfXyz(expected, white), labOfXyz(given, white)));
          return worst < 0.01;
        }),
        { seed },
      );
      process.stdout.write(
        `${name} before ${lampName}: off by ${worst.toExponential(1)} CIEDE2000 at most\n`,
      );
    },
  );

  it('before the gate light itself stays as it is', () => {
    const same = relight(dyeSets[name], gateLight);
    fc.assert(
      fc.property(amounts, (dyes) => {
        const colour = filmOf(name, dyes);
        return through(same, colour).every((value, k) => Math.abs(value - colour[k]) < 1e-8);
      }),
      { seed },
    );
  });

  it('knows its own colours from those it cannot show', () => {
    const old: StockAge = {
      dyes: dyeSets[name],
      loss: { cyan: 0.4, magenta: 0.1, yellow: 0.2 },
      stain: { red: 0, green: 0.01, blue: 0.05 },
    };
    const [shows, aged] = [filmGamut(old), ageStock(old)];
    const within = fc.double({ min: 0.01, max: 2.99, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(within, within, within), (dyes) => shows(...through(aged, filmOf(name, dyes)))),
      { seed },
    );
    expect(shows(1, 1, 1)).toBe(false);
    expect(shows(0, 0, 0)).toBe(false);
    expect(shows(0, 1, 0)).toBe(false);
    expect(shows(1, 0, 0)).toBe(false);
  });
});

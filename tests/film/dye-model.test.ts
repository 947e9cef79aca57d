import { describe, expect, it } from 'vitest';
import { illuminants } from '../../src/colour/illuminants/index.js';
import { xyzOf, xyzOfTransmittance } from '../../src/colour/observer.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { densityOf } from '../../src/film/density.js';
import { dyeModel } from '../../src/film/dye-model.js';
import { type DyeSet, dyeSets } from '../../src/film/dye-sets/index.js';
import { filmLight, type FilmLight, filmWavelengths } from '../../src/film/film-light.js';
import { gateLight } from '../../src/film/stock.js';
import { invert3, transform3, type Triple } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';
import { lamps } from '../../src/projection/lamps/index.js';

/** The exponential of the model is good to 2e-13; sums and roundings of some hundred terms. */
const roundings = 1e-12;
/** The slow way sums to 780 nm and not to 730: of red light that film lets through there, up to 0.2 %. */
const beyond730 = 2e-3;

const seed = 3;
const amountsOf = (random: () => number): Triple => [2.5 * random(), 2.5 * random(), 2.5 * random()];

/** The whole film spectrally, as a textbook has it: T on every wavelength, XYZ, BT.2020 relative to the open gate. */
function slowly(dyes: DyeSet, [c, m, y]: Triple, lamp: Float64Array): Triple {
  const transmittance = dyes.base.map(
    (base, i) => 10 ** -(base + c * dyes.cyan[i] + m * dyes.magenta[i] + y * dyes.yellow[i]),
  );
  const toRgb = invert3(rgbToXyz(primaries.bt2020));
  const film = transform3(toRgb, xyzOfTransmittance(transmittance, lamp));
  const [x, luminance, z] = xyzOf(lamp);
  const gate = transform3(toRgb, [x / luminance, 1, z / luminance]);
  return [film[0] / gate[0], film[1] / gate[1], film[2] / gate[2]];
}

/** A light of one wavelength: its density is the spectral density. */
function monochromatic(nm: number): FilmLight {
  const line = new Float64Array(filmWavelengths);
  line[(nm - 380) / 5] = 1;
  return { red: line, green: line, blue: line, openGate: [1, 1, 1] };
}

describe.each(Object.entries(dyeSets))('dyes %s', (_, dyes) => {
  it('add their densities on every wavelength (Beer-Lambert)', () => {
    const random = seededRandom(seed);
    const out = new Float64Array(3);
    for (let nm = 380; nm <= 730; nm += 25) {
      const model = dyeModel(dyes, dyes.base, monochromatic(nm));
      const i = (nm - 380) / 5;
      const densityAt = ([c, m, y]: Triple) => {
        model.light(c, m, y, out);
        return -Math.log10(out[0]);
      };
      const [a, b] = [amountsOf(random), amountsOf(random)];
      const sum: Triple = [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
      const clear = densityAt([0, 0, 0]);
      expect(Math.abs(clear - dyes.base[i])).toBeLessThan(roundings);
      expect(Math.abs(densityAt(sum) + clear - densityAt(a) - densityAt(b))).toBeLessThan(roundings);
      expect(Math.abs(densityAt([1, 0, 0]) - clear - dyes.cyan[i])).toBeLessThan(roundings);
      expect(Math.abs(densityAt([0, 1, 0]) - clear - dyes.magenta[i])).toBeLessThan(roundings);
      expect(Math.abs(densityAt([0, 0, 1]) - clear - dyes.yellow[i])).toBeLessThan(roundings);
    }
  });

  it.each(['d65', 'incandescent', 'xenon'] as const)(
    'before %s are what the slow sum over the spectrum gives',
    (name) => {
      const lamp = lamps[name].spectrum;
      const model = dyeModel(dyes, dyes.base, filmLight(lamp));
      const random = seededRandom(seed);
      const out = new Float64Array(3);
      for (let n = 0; n < 50; n++) {
        const amounts = amountsOf(random);
        model.light(...amounts, out);
        slowly(dyes, amounts, lamp).forEach((value, k) =>
          expect(Math.abs(out[k] - value), `${amounts} channel ${k}`).toBeLessThan(beyond730 * 0.2),
        );
      }
    },
  );

  it('have the slopes that small steps have', () => {
    const model = dyeModel(dyes, dyes.base, gateLight);
    const random = seededRandom(seed);
    const [out, above, below] = [new Float64Array(12), new Float64Array(3), new Float64Array(3)];
    const h = 1e-5;
    for (let n = 0; n < 20; n++) {
      const amounts = amountsOf(random);
      model.lightAndSlopes(...amounts, out);
      model.light(...amounts, above);
      expect([...out.subarray(0, 3)]).toEqual([...above]);
      for (let j = 0; j < 3; j++) {
        const step = (by: number) =>
          amounts.map((value, k) => (k === j ? value + by : value)) as unknown as Triple;
        model.light(...step(h), above);
        model.light(...step(-h), below);
        // Second-order error of the difference and its roundings.
        for (let k = 0; k < 3; k++)
          expect(Math.abs(out[3 + 3 * k + j] - (above[k] - below[k]) / (2 * h))).toBeLessThan(1e-8);
      }
    }
  });

  it("let the open gate's light through their base alone when there is no dye", () => {
    const out = new Float64Array(3);
    dyeModel(dyes, dyes.base, gateLight).light(0, 0, 0, out);
    const densities = [...out].map(densityOf);
    const [least, most] = [Math.min(...dyes.base), Math.max(...dyes.base)];
    densities.forEach((density) => {
      expect(density).toBeGreaterThan(least);
      expect(density).toBeLessThan(most);
    });
  });
});

it('the gate light is D65, as the camera balances it', () => {
  const slow = filmLight(illuminants.d65.spectrum);
  expect([...gateLight.green]).toEqual([...slow.green]);
  gateLight.openGate.forEach((value) => expect(Math.abs(value - 1)).toBeLessThan(1e-3));
});

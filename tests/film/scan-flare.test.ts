import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { behindScanFlare, filmAlone } from '../../src/film/scan-flare.js';
import { ageStock, restoreStock } from '../../src/film/stock.js';
import type { Run } from '../../src/maths/matrix3.js';

const through = (run: Run, light: readonly number[]): number[] => {
  const values = Float64Array.from(light);
  run(values, values.length / 3);
  return [...values];
};
const asItIs: Run = () => undefined;
const seed = 31;
const flares = fc.double({ min: 0, max: 0.05, noNaN: true });
const lights = fc.array(fc.double({ min: -0.01, max: 1.2, noNaN: true }), { minLength: 6, maxLength: 6 });

describe('stray light of a scan', () => {
  it('changes nothing by itself, in film and beyond', () =>
    fc.assert(
      fc.property(flares, lights, (share, light) => {
        const same = through(behindScanFlare(share, asItIs, asItIs), light);
        return same.every((v, i) => Math.abs(v - light[i]) < 1e-15);
      }),
      { seed },
    ));

  it('is none where there is none', () => {
    const run: Run = (values) => values.fill(0.5);
    expect(behindScanFlare(0, run, asItIs)).toBe(run);
    expect(through(filmAlone(0), [0, -1, 0.3])).toEqual([0, -1, 0.3]);
  });

  it('lies over aged film as over sound film, and the dyes come back as without it', () => {
    const age = {
      dyes: dyeSets['reversal-late'],
      loss: { cyan: 0.55, magenta: 0.1, yellow: 0.3 },
      stain: { red: 0.01, green: 0.02, blue: 0.05 },
    };
    const [aged, restored] = [ageStock(age), restoreStock(age)];
    const share = 0.003;
    const flared = (light: readonly number[]) => light.map((v) => v + share);
    // greys of density 0.2 to 2.9, the blackest there is on reversal film
    for (const density of [0.2, 0.5, 1, 1.5, 2, 2.5, 2.9]) {
      const sound = Array<number>(3).fill(10 ** -density);
      const scanned = flared(through(aged, sound));
      const back = through(behindScanFlare(share, restored, asItIs), scanned);
      const plain = flared(through(restored, through(aged, sound)));
      back.forEach((v, k) => expect(v).toBeCloseTo(plain[k], 9));
      const unaware = through(restored, scanned);
      // left in, it makes a faded black too dense: more than the flare itself is amiss
      if (density > 2) expect(Math.abs(unaware[0] - flared(sound)[0])).toBeGreaterThan(0.5 * share);
    }
  });

  it('leaves light above none below what a scan tells, brighter where more came', () => {
    const dark = Array.from({ length: 50 }, (_, i) => -0.01 + i * 0.0004);
    const film = dark.map((v) => through(filmAlone(0.002), [v, v, v])[0]);
    film.forEach((v, i) => {
      expect(v).toBeGreaterThan(0);
      if (i > 0) expect(v).toBeGreaterThan(film[i - 1]);
    });
  });
});

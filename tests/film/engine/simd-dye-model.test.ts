import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadFilm } from '../../../src/cli/engine/load-film.js';
import { packageFolder } from '../../../src/cli/maker.js';
import { dyeModel } from '../../../src/film/dye-model.js';
import { dyeSets } from '../../../src/film/dye-sets/index.js';
import { filmLight } from '../../../src/film/film-light.js';
import { stainSpectrum } from '../../../src/film/stain.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { readLook } from '../../../src/look/read-look.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { seededRandom } from '../../../src/maths/random.js';
import { lamps } from '../../../src/projection/lamps/index.js';

const simdModel = loadFilm(packageFolder);
const seed = 19680402;

/** Every dye set before a lamp of its own, with some stain: more models than the compiled loops have places for. */
const films = Object.values(dyeSets).flatMap((dyes, i) =>
  Object.values(lamps).map(({ spectrum }) => {
    const stain = stainSpectrum({ red: 0.02 * i, green: 0.05, blue: 0.12 });
    return [dyes, dyes.base.map((base, nm) => base + stain[nm]), filmLight(spectrum)] as const;
  }),
);

it('the compiled loops are what is tested here', () => expect(simdModel).not.toBe(dyeModel));

it('without a compiled module the plain model serves', () =>
  expect(loadFilm('/no/such/folder')).toBe(dyeModel));

describe('the compiled film model', () => {
  it.each([
    ['film holds', -0.5, 4.5],
    ['restoring asks for', -5, 45],
    ['no film has, up to the ends', -100, 100],
  ])('gives what the plain one gives, to the last bit, for amounts that %s', (_, least, most) => {
    const random = seededRandom(seed);
    const pairs = films.map((film) => [simdModel(...film), dyeModel(...film)] as const);
    expect(pairs.length).toBeGreaterThan(8);
    for (let n = 0; n < 20_000; n++) {
      const models = pairs[Math.floor(pairs.length * random())];
      const amount = () => least + (most - least) * random();
      const [c, m, y] = [amount(), amount(), amount()];
      const [simd, plain] = models.map((model) => {
        const [light, slopes] = [new Float64Array(3), new Float64Array(12)];
        model.light(c, m, y, light);
        model.lightAndSlopes(c, m, y, slopes);
        return [...light, ...slopes];
      });
      expect(simd).toEqual(plain);
    }
  });

  it('knows no light where an amount is not a number', () => {
    const light = new Float64Array(3);
    simdModel(...films[0]).light(NaN, 1, 1, light);
    expect([...light]).toEqual([NaN, NaN, NaN]);
  });

  const looks = readdirSync(join(packageFolder, 'looks'));
  it.each(looks)('makes the same table of looks/%s, to the last bit', (file) => {
    const look = readLook(readFileSync(join(packageFolder, 'looks', file), 'utf8'), file);
    const [simd, plain] = [simdModel, dyeModel].map((make) => sampleLattice(compileLook(look, make), 17));
    expect(simd.values).toEqual(plain.values);
  });
});

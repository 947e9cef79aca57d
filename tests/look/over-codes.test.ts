import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileLook } from '../../src/look/compile-look.js';
import { randomFilmCodes } from '../../src/look/film-codes.js';
import { type Look, lookSchema } from '../../src/look/look-schema.js';
import { lookOverCodes } from '../../src/look/over-codes.js';
import { readLook } from '../../src/look/read-look.js';
import { seededRandom } from '../../src/maths/random.js';

const folder = join(import.meta.dirname, '../../looks');
const ready = readdirSync(folder).map((file) => readLook(readFileSync(join(folder, file), 'utf8'), file));

/** Dye amounts are sought from where the colour before lay: other neighbours, another last digit. */
const searchRounding = 1e-6;

function farthest(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i])), 0);
}

function expectAsCompiled(over: (look: Look) => Float64Array, look: Look, codes: Float64Array): void {
  const direct = codes.slice();
  compileLook(look)(direct, direct.length / 3);
  expect(farthest(over(look), direct)).toBeLessThan(searchRounding);
}

describe('lookOverCodes', () => {
  const codes = randomFilmCodes(ready[0], 300, seededRandom(8));

  it('gives what each look gives, whichever came before', () => {
    const over = lookOverCodes(codes);
    for (const look of [...ready, ...ready.toReversed()]) expectAsCompiled(over, look, codes);
  });

  it('follows a change in any section, and its undoing', () => {
    const over = lookOverCodes(codes);
    const look = ready.find(({ name }) => name === 'Warm stock, lamp light')!;
    const changes: Partial<Record<keyof Look, object>>[] = [
      { camera: { encoding: 'bt709' } },
      { camera: { openGate: 0.8 } },
      { camera: { flare: 0.003 } },
      { stock: { ...look.stock, loss: { cyan: 0.4 } } },
      { stock: { ...look.stock, dyes: 'print' } },
      { print: { exposureStops: 0.5, printerPoints: { red: 3 } } },
      { projector: { ...look.projector, lamp: { kelvin: 2600 } } },
      { projector: { ...look.projector, flare: 0.02 } },
      { room: { ...look.room, adaptation: 0.3 } },
      { rolloff: { shoulderSoftness: 0.9 } },
      { delivery: { primaries: 'bt2020' } },
      { delivery: { range: 'legal', gamutCompression: false } },
    ];
    for (const change of changes) {
      expectAsCompiled(over, lookSchema.parse({ ...look, ...change }), codes);
      expectAsCompiled(over, look, codes);
    }
  });

  it('leaves the codes and earlier answers alone', () => {
    const own = codes.slice();
    const over = lookOverCodes(own);
    const first = over(ready[0]);
    const kept = first.slice();
    over(ready[1]).fill(0);
    over(ready[0]).fill(0);
    expect(own).toEqual(codes);
    expect(first).toEqual(kept);
    expectAsCompiled(over, ready[0], codes);
  });

  it('is the identity where nothing is asked', () => {
    expect(farthest(lookOverCodes(codes)(lookSchema.parse({ name: 'x' })), codes)).toBeLessThan(
      searchRounding,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { compileLook } from '../../src/look/compile-look.js';
import { filmGreys } from '../../src/look/film-codes.js';
import { readLook } from '../../src/look/read-look.js';

const lookOf = (fields: object) => readLook(JSON.stringify({ name: 'x', ...fields }), 'x.json');
const pink = { dyes: 'reversal-late', loss: { cyan: 0.6, yellow: 0.2 }, stain: { blue: 0.05 } };

describe('the greys of a film', () => {
  it.each([
    ['sRGB', { openGate: 0.87 }],
    ['HLG in BT.2020, legal', { encoding: 'hlg', primaries: 'bt2020', range: 'legal' }],
  ])('in %s are what its look turns into greys, from dark to light', (_, camera) => {
    const look = lookOf({ camera, stock: pink });
    const greys = filmGreys(look, 200)!;
    const seen = greys.slice();
    compileLook(look)(seen, seen.length / 3);
    for (let i = 0; i < seen.length; i += 3) {
      // A hundredth of a 10-bit code: what finding the dyes anew leaves.
      expect(Math.abs(seen[i] - seen[i + 1])).toBeLessThan(1e-5);
      expect(Math.abs(seen[i + 2] - seen[i + 1])).toBeLessThan(1e-5);
      if (i > 0) expect(seen[i + 1]).toBeGreaterThan(seen[i - 2]);
    }
    expect(Math.max(...greys.map((code, i) => (i % 3 === 0 ? code - greys[i + 1] : 0)))).toBeGreaterThan(0.1);
  });

  it('are greys where nothing is to be undone', () => {
    expect(filmGreys(lookOf({}), 50)).toBeUndefined();
    expect(filmGreys(lookOf({ stock: { dyes: 'print' } }), 50)).toBeUndefined();
  });
});

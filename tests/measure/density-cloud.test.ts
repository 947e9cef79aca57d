import { describe, expect, it } from 'vitest';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { amountCloud, densityCloud } from '../../src/measure/density-cloud.js';
import { dyeSpace } from '../../src/measure/dye-space.js';
import { filmColours } from '../../src/measure/film-colours.js';
import { seededRandom } from '../../src/maths/random.js';

const random = seededRandom(3);
const light = Float64Array.from({ length: 3000 }, () => 0.01 + 0.8 * random());
const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0);

describe('the density cloud', () => {
  it('counts every block once and keeps the mean density', () => {
    const { densities, counts } = densityCloud(light, 0.9, 0);
    expect(sum(counts)).toBe(1000);
    for (let k = 0; k < 3; k++) {
      const mean = counts.reduce((total, n, i) => total + (n * densities[3 * i + k]) / 1000, 0);
      const plain = light.reduce(
        (total, v, i) => (i % 3 === k ? total - Math.log10(v / 0.9) / 1000 : total),
        0,
      );
      expect(mean).toBeCloseTo(plain, 6);
    }
  });

  it('gathers equal blocks in one cell, and stays finite for no light and less than none', () => {
    const { densities, counts } = densityCloud(
      Float64Array.of(0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0, -0.1, 0.2),
      1,
      0,
    );
    expect([...counts]).toEqual([2, 1]);
    expect(densities.every(Number.isFinite)).toBe(true);
  });

  it('takes flare off: a black behind stray light has its own density again', () => {
    const { densities } = densityCloud(
      Float64Array.of(0.003, 0.103, 0.503).map((v) => 0.8 * v),
      0.8,
      0.002,
    );
    [3, -Math.log10(0.101), -Math.log10(0.501)].forEach((d, k) => expect(densities[k]).toBeCloseTo(d, 3));
  });

  const space = dyeSpace(dyeSets['reversal-late']);

  it('says add up to one for a colourful still, and to that of one colour for a plainer one', () => {
    expect(sum(amountCloud(densityCloud(light, 0.9, 0), space).weights)).toBeCloseTo(1, 12);
    const even = new Float64Array(300).fill(0.5);
    expect(sum(amountCloud(densityCloud(even, 1, 0), space).weights)).toBeCloseTo(
      1 / filmColours.coloursAStill,
      12,
    );
  });

  it('a large area does not drown a small one', () => {
    const blocks = Float64Array.from({ length: 300 }, (_, i) => (i < 3 ? 0.005 : 0.5));
    const { weights } = amountCloud(densityCloud(blocks, 1, 0), space);
    expect(Math.min(...weights) / sum(weights)).toBeGreaterThan(0.05);
  });
});

import { describe, expect, it } from 'vitest';
import { normalRandom, seededRandom } from '../../src/maths/random.js';

const draw = (count: number, next: () => number) => Array.from({ length: count }, next);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('seeded random numbers', () => {
  it('are the same for the same seed and others for another', () => {
    expect(draw(20, seededRandom(7))).toEqual(draw(20, seededRandom(7)));
    expect(draw(20, seededRandom(7))).not.toEqual(draw(20, seededRandom(8)));
  });

  it('lie in 0..1, evenly', () => {
    const values = draw(100_000, seededRandom(1));
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
    // Ten bins of 10000; four deviations of a binomial are 380.
    for (let bin = 0; bin < 10; bin++) {
      const inBin = values.filter((value) => Math.floor(10 * value) === bin).length;
      expect(Math.abs(inBin - 10_000)).toBeLessThan(380);
    }
  });

  it('become normal deviates of mean 0 and deviation 1, always finite', () => {
    const random = seededRandom(2);
    const values = draw(100_000, () => normalRandom(random));
    expect(values.every(Number.isFinite)).toBe(true);
    // Four deviations of the mean and of the mean square of 100000.
    expect(Math.abs(mean(values))).toBeLessThan(0.0127);
    expect(Math.abs(mean(values.map((value) => value * value)) - 1)).toBeLessThan(0.018);
    expect(normalRandom(() => 0)).not.toBeNaN();
    expect(Number.isFinite(normalRandom(() => 1 - 2 ** -32))).toBe(true);
  });
});

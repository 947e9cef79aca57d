import { describe, expect, it } from 'vitest';
import { levelFilter, surprises } from '../../../src/capture/speed/level-filter.js';
import { normalRandom, seededRandom } from '../../../src/maths/random.js';

const frames = 4000;
/** A random walk under white noise. */
function wander(step: number, white: number, seed: number): Float64Array {
  const random = seededRandom(seed);
  let level = 0;
  return new Float64Array(frames).map(
    () => (level += step * normalRandom(random)) + white * normalRandom(random),
  );
}

/** Four deviations of a variance from so many normal draws. */
const sampling = 4 * Math.sqrt(2 / frames);

describe('surprises of a wandering level', () => {
  it.each([
    [0.01, 0.02],
    [0, 0.02],
    [0.01, 0],
  ])('are white and of variance 1 for steps of %d under noise of %d', (step, white) => {
    const filter = levelFilter({ steps: new Float64Array(frames).fill(step ** 2), white: white ** 2 });
    const found = surprises(filter, wander(step, white, 3)).subarray(1);
    const lag = (by: number) =>
      found.reduce((sum, value, n) => sum + value * (found[n + by] ?? 0), 0) / found.length;
    expect(Math.abs(lag(0) - 1)).toBeLessThan(sampling);
    expect(Math.abs(lag(1))).toBeLessThan(sampling);
    expect(Math.abs(lag(2))).toBeLessThan(sampling);
  });

  it('of a sum are the sum of the surprises', () => {
    const filter = levelFilter({ steps: new Float64Array(frames).fill(1e-4), white: 4e-4 });
    const [a, b] = [wander(0.01, 0.02, 1), wander(0.02, 0.01, 2)];
    const both = surprises(
      filter,
      a.map((value, n) => value + 3 * b[n]),
    );
    const [ofA, ofB] = [surprises(filter, a), surprises(filter, b)];
    both.forEach((value, n) => expect(value).toBeCloseTo(ofA[n] + 3 * ofB[n], 9));
  });

  it('know nothing of a level that begins anew', () => {
    const steps = new Float64Array(20).fill(1e-4);
    steps[10] = Infinity;
    const filter = levelFilter({ steps, white: 1e-4 });
    const series = new Float64Array(20).map((_, n) => (n < 10 ? 0 : 5));
    surprises(filter, series).forEach((value) => expect(value).toBeCloseTo(0, 12));
  });
});

import { describe, expect, it } from 'vitest';
import { minimise } from '../../src/measure/minimise.js';

describe('minimise', () => {
  it('finds the minimum at 1, 1 of the curved valley of Rosenbrock (1960, The Computer Journal 3, 175)', () => {
    const valley = ([x, y]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2;
    const { at, value } = minimise(valley, [-1.2, 1], [0.5, 0.5], { most: 500, enough: 1e-12 });
    expect(at[0]).toBeCloseTo(1, 4);
    expect(at[1]).toBeCloseTo(1, 4);
    expect(value).toBeLessThan(1e-8);
  });

  it('is not stopped by a kink', () => {
    const roof = (x: readonly number[]) => x.reduce((sum, v, i) => sum + Math.abs(v - i), 0);
    const { at } = minimise(roof, [3, 3, 3], [1, 1, 1], { most: 600, enough: 1e-9 });
    at.forEach((v, i) => expect(v).toBeCloseTo(i, 3));
  });

  it('never returns worse than the start', () => {
    const spike = ([x]: readonly number[]) => (x === 2 ? -1 : 0);
    expect(minimise(spike, [2], [1])).toEqual({ at: [2], value: -1 });
  });
});

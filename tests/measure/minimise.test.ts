import { describe, expect, it } from 'vitest';
import { minimise, type Sloped } from '../../src/measure/minimise.js';

describe('minimise', () => {
  it('finds the minimum at 1, 1 of the curved valley of Rosenbrock (1960, The Computer Journal 3, 175)', () => {
    const valley: Sloped = ([x, y], slopes) => {
      slopes.set([-400 * x * (y - x * x) - 2 * (1 - x), 200 * (y - x * x)]);
      return 100 * (y - x * x) ** 2 + (1 - x) ** 2;
    };
    const { at, value } = minimise(valley, [-1.2, 1], { most: 200, enough: 1e-14 });
    expect(at[0]).toBeCloseTo(1, 4);
    expect(at[1]).toBeCloseTo(1, 4);
    expect(value).toBeLessThan(1e-8);
  });

  it('ends a square form of several variables in hardly more steps than it has variables', () => {
    const form: Sloped = (x, slopes) =>
      x.reduce((sum, v, i) => {
        slopes[i] = 2 * (i + 1) * (v - i);
        return sum + (i + 1) * (v - i) ** 2;
      }, 0);
    const { at } = minimise(form, [3, 3, 3, 3], { most: 15, enough: 0 });
    at.forEach((v, i) => expect(v).toBeCloseTo(i, 3));
  });

  it('stays where there is no slope, and never returns worse than the start', () => {
    const flat: Sloped = (_, slopes) => slopes.fill(0) && 7;
    expect(minimise(flat, [2, 5])).toEqual({ at: [2, 5], value: 7 });
    const wrongSlope: Sloped = ([x], slopes) => {
      slopes[0] = -1;
      return x * x;
    };
    expect(minimise(wrongSlope, [0])).toEqual({ at: [0], value: 0 });
  });
});

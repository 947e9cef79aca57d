import { describe, expect, it } from 'vitest';
import { percentile } from '../../src/maths/percentile.js';

describe('percentile', () => {
  it.each([
    [0, 1],
    [0.25, 2],
    [0.5, 3],
    [0.6, 3.4],
    [1, 5],
  ])('%s of 5 3 1 4 2 is %s', (p, expected) =>
    expect(percentile(Float64Array.of(5, 3, 1, 4, 2), p)).toBeCloseTo(expected, 12),
  );

  it('sorts by number, not by spelling', () => expect(percentile(Float64Array.of(100, 20, 3), 0)).toBe(3));

  it('of one value is that value, and of none NaN', () => {
    expect(percentile(Float64Array.of(7), 0.3)).toBe(7);
    expect(percentile(new Float64Array(0), 0.5)).toBeNaN();
  });

  it('takes infinities for values', () =>
    expect(percentile(Float64Array.of(-Infinity, 0, Infinity), 0.5)).toBe(0));
});

import { describe, expect, it } from 'vitest';
import { pq } from '../../../src/colour/transfer-functions/pq.js';

describe('PQ beyond its formula', () => {
  it('goes on with its tangent above signal 1', () => {
    const h = 1e-6;
    const slope = (pq.decode(1) - pq.decode(1 - h)) / h;
    expect((pq.decode(1.5) - 1) / 0.5 / slope).toBeCloseTo(1, 4);
    expect(pq.encode(pq.decode(2.5))).toBeCloseTo(2.5, 12);
  });

  it('decodes every signal of no light to no light', () => {
    expect(pq.decode(0)).toBe(0);
    expect(pq.decode(7e-7)).toBe(0);
    expect(pq.decode(-7e-7)).toBe(-0);
    expect(pq.encode(0)).toBeGreaterThan(7e-7);
  });
});

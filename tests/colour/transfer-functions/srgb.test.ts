import { describe, expect, it } from 'vitest';
import { srgb } from '../../../src/colour/transfer-functions/srgb.js';
import { printed } from '../../tolerances.js';

describe('sRGB at its break', () => {
  it('has the published break in light, 0.0031308 (IEC 61966-2-1)', () => {
    expect(Math.abs(srgb.decode(0.04045) - 0.0031308)).toBeLessThan(printed(7));
  });

  it('does not turn back between its branches', () => {
    const lights = Array.from({ length: 2001 }, (_, i) => 0.0031308 + i * 5e-12);
    expect(lights.filter((light, i) => i > 0 && srgb.encode(light) < srgb.encode(lights[i - 1]))).toEqual([]);
    expect(srgb.encode(0.003130806)).toBe(0.04045);
  });
});

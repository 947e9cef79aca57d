import { describe, expect, it } from 'vitest';
import { moveFrame, shiftBetween } from '../../../src/capture/speed/register-frames.js';
import type { LightFrame } from '../../../src/capture/speed/light-frame.js';

const [width, height] = [96, 72];

/** A smooth picture drawn at a shift, so much lighter. */
function drawn(x: number, y: number, gain = 1): LightFrame {
  const light = new Float32Array(width * height).map((_, i) => {
    const [u, v] = [(i % width) - x, Math.floor(i / width) - y];
    return gain * (0.3 + 0.1 * Math.sin(u / 5) * Math.cos(v / 7) + 0.08 * Math.sin((u + 2 * v) / 9));
  });
  return { width, height, light };
}

/** Slopes over two pixels and bilinear sampling of waves of 30 pixels. */
const hundredthsOfAPixel = 0.03;

describe('the shift between two frames', () => {
  it.each([
    [0, 0],
    [0.3, -0.4],
    [-1.7, 0.9],
    [2.6, 2.2],
  ])('of %d, %d pixels is found', (x, y) => {
    const found = shiftBetween(drawn(0, 0), drawn(x, y, 1.1), 1.1);
    expect(Math.abs(found.x - x)).toBeLessThan(hundredthsOfAPixel);
    expect(Math.abs(found.y - y)).toBeLessThan(hundredthsOfAPixel);
  });

  it('is none where nothing can be seen', () => {
    const flat = { width, height, light: new Float32Array(width * height).fill(0.4) };
    expect(shiftBetween(flat, flat, 1)).toEqual({ x: 0, y: 0 });
  });

  it('moves a frame, and leaves unknown what comes from outside', () => {
    const moved = moveFrame(drawn(0, 0), { x: 2, y: -1 });
    const wanted = drawn(2, -1).light;
    const inside = 30 * width + 40;
    expect(moved[inside]).toBeCloseTo(wanted[inside], 6);
    expect(moved[30 * width]).toBeNaN();
    expect(moved[(height - 1) * width + 40]).toBeNaN();
  });
});

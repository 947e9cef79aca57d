import { describe, expect, it } from 'vitest';
import { register } from '../../src/burn-in/register.js';
import { samplePixels } from '../../src/burn-in/sample.js';
import { makePicture } from '../../src/picture/picture.js';
import { losslessLooks } from '../lut/inverse-looks.js';
import { asItIs, drawnScene, shoot } from './scene.js';

const stills = { width: 240, height: 180, noise: 0.6, bits: 8 } as const;

/** Two codes of 255 of look, noise and rounding move a fit by a few hundredths of a pixel. */
const foundWithin = 0.1;

describe('register', () => {
  const scene = drawnScene(12);
  const plain = shoot(scene, asItIs, { ...stills, dx: 0, dy: 0, seed: 1 });

  it.each([
    [0, 0],
    [0.5, -0.5],
    [3, 3],
    [-3, 2.75],
    [1.25, -2.6],
    [0.05, 0],
  ])('finds a shift of %d, %d through a strong look', (dx, dy) => {
    const burnt = shoot(scene, losslessLooks['projected warm'], { ...stills, dx, dy, seed: 2 });
    const found = register(plain, burnt);
    expect(Math.hypot(found.dx - dx, found.dy - dy)).toBeLessThan(foundWithin);
    expect(found.correlation).toBeGreaterThan(0.9);
  });

  it('finds nothing in a flat frame, and says so', () => {
    const flat = makePicture(100, 90, { channels: 3, bits: 8 }, new Uint8Array(27000).fill(90));
    const { dx, dy, correlation } = register(flat, flat);
    expect([dx, dy]).toEqual([0, 0]);
    expect(correlation).toBeCloseTo(0, 12);
  });
});

describe('reading between pixels', () => {
  it('gives a quadratic exactly, as cubic convolution must', () => {
    const of = (x: number, y: number) => 1000 + 3 * x * x + 20 * x - 2 * y * y + 150 * y;
    const picture = makePicture(40, 30, { channels: 3, bits: 16 });
    for (let y = 0; y < 30; y++)
      for (let x = 0; x < 40; x++) picture.data.fill(of(x, y), 3 * (y * 40 + x), 3 * (y * 40 + x) + 3);
    const out = new Float64Array(3 * 5);
    samplePixels(picture, 10.3, 12.6, 5, out);
    for (let i = 0; i < 5; i++) expect(65535 * out[3 * i]).toBeCloseTo(of(10.3 + i, 12.6), 6);
  });
});

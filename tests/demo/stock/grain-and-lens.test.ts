import { describe, expect, it } from 'vitest';
import { addGrain } from '../../../src/demo/stock/grain.js';
import { throughLens } from '../../../src/demo/stock/lens.js';

const [width, height] = [480, 360];

const grain = (seed: number) => {
  const values = new Float64Array(3 * width * height);
  addGrain(values, width, height, seed);
  return values;
};

function deviationOf(values: Float64Array, layer: number): { mean: number; deviation: number } {
  const of = values.filter((_, i) => i % 3 === layer);
  const mean = of.reduce((sum, value) => sum + value, 0) / of.length;
  return { mean, deviation: Math.sqrt(of.reduce((sum, value) => sum + (value - mean) ** 2, 0) / of.length) };
}

describe('grain', () => {
  it('is the same for the same seed and another for another', () => {
    const [once, twice, other] = [grain(5), grain(5), grain(6)];
    expect(once.every((value, i) => value === twice[i])).toBe(true);
    expect(once.some((value, i) => value !== other[i])).toBe(true);
  });

  it('has no mean, and most of it in the blue layer', () => {
    const layers = [0, 1, 2].map((layer) => deviationOf(grain(9), layer));
    // 43 000 points that share a part with their neighbours: the mean strays by less than a fiftieth of a deviation.
    for (const { mean, deviation } of layers) {
      expect(Math.abs(mean)).toBeLessThan(deviation / 50);
      expect(deviation).toBeGreaterThan(0);
    }
    expect(layers[2].deviation).toBeGreaterThan(layers[0].deviation);
  });

  it('leaves the layers independent', () => {
    const values = grain(11);
    let together = 0;
    for (let i = 0; i < values.length; i += 3) together += values[i] * values[i + 1];
    const correlation =
      together / (width * height) / (deviationOf(values, 0).deviation * deviationOf(values, 1).deviation);
    expect(Math.abs(correlation)).toBeLessThan(0.03);
  });
});

describe('the lens', () => {
  const frame = (light: (x: number, y: number) => number) => ({
    width,
    height,
    light: Float32Array.from({ length: 3 * width * height }, (_, i) =>
      light(Math.floor(i / 3) % width, Math.floor(i / 3 / width)),
    ),
  });
  const at = (light: Float32Array, x: number, y: number) => [
    ...light.subarray(3 * (y * width + x), 3 * (y * width + x) + 3),
  ];

  it('keeps an even field, darker towards the corners', () => {
    const { light } = throughLens(frame(() => 0.5));
    // Single precision.
    for (const value of at(light, width / 2, height / 2)) expect(value).toBeCloseTo(0.5, 4);
    for (const value of at(light, 0, 0)) expect(value).toBeLessThan(0.45);
    expect(at(light, 0, 0)[1]).toBeCloseTo(at(light, width - 1, height - 1)[1], 2);
  });

  it('spreads a bright spot, redder with distance, and adds no light', () => {
    const spot = (x: number, y: number) => (Math.hypot(x - 240, y - 180) < 12 ? 1 : 0);
    const { light } = throughLens(frame(spot));
    const [red, green, blue] = at(light, 240 + 17, 180);
    expect(red).toBeGreaterThan(green);
    expect(green).toBeGreaterThan(blue);
    const sum = light.reduce((total, value) => total + value, 0);
    const before = frame(spot).light.reduce((total, value) => total + value, 0);
    expect(sum / before).toBeLessThanOrEqual(1);
    expect(sum / before).toBeGreaterThan(0.98);
  });
});

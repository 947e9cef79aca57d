import { describe, expect, it } from 'vitest';
import type { FrameSample } from '../../../src/measure/frame-choice/pass-over.js';
import { chooseSpread } from '../../../src/measure/frame-choice/spread.js';
import { frameTraits } from '../../../src/measure/frame-choice/traits.js';
import { scene } from './scenes.js';

const sample = (index: number, kind: number): FrameSample => ({
  index,
  traits: frameTraits(scene(kind, 0, { seed: index })),
  fromBefore: 0,
  fromAfter: 0,
});

describe('frames spread over a reel', () => {
  it('one of each scene before two of one', () => {
    // Five scenes of very different length.
    const lengths = [60, 3, 25, 2, 10];
    const kinds = lengths.flatMap((length, kind) => Array.from({ length }, () => kind));
    const samples = kinds.map((kind, i) => sample(10 * i, kind));
    const chosen = chooseSpread(samples, 5, 1000);
    expect(new Set(chosen.map(({ index }) => kinds[index / 10]))).toEqual(new Set([0, 1, 2, 3, 4]));
  });

  it('evenly where all look alike, in the reel’s order', () => {
    const samples = Array.from({ length: 100 }, (_, i) => sample(10 * i, 1));
    const places = chooseSpread(samples, 8, 1000).map(({ index }) => index);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(new Set(places).size).toBe(8);
    expect(places[0]).toBeLessThan(200);
    expect(places[7]).toBeGreaterThan(800);
    const gaps = places.slice(1).map((place, i) => place - places[i]);
    expect(Math.min(...gaps)).toBeGreaterThan(50);
  });

  it('all there are where they are too few, and never one twice', () => {
    const samples = [sample(3, 1), sample(9, 1)];
    expect(chooseSpread(samples, 8, 20)).toEqual(samples);
    expect(chooseSpread([], 8, 20)).toEqual([]);
    const alike = Array.from({ length: 5 }, (_, index) => ({ ...samples[0], index }));
    expect(new Set(chooseSpread(alike, 4, 1000)).size).toBe(4);
  });
});

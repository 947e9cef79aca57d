import { describe, expect, it } from 'vitest';
import { shutterRows } from '../../shared/check-values/capture.js';
import { seededRandom } from '../../src/maths/random.js';
import type { Chopper } from '../../src/capture/shutter.js';
import {
  beatHz,
  flickerFreeExposuresS,
  flickerHz,
  flickerLeft,
  nearestOffered,
  shutterAngle,
  speedTrim,
} from '../../src/capture/shutter.js';

const chopper = (filmFps: number, blades: number, openShare = 0.5): Chopper => ({
  filmFps,
  blades,
  openShare,
});

/** Light caught from `start` on, summed over thin slices of time: the slow plain version. */
function lightCaught({ filmFps, blades, openShare }: Chopper, start: number, exposureS: number): number {
  const slices = 4000;
  let lit = 0;
  for (let i = 0; i < slices; i++) {
    const periods = (start + ((i + 0.5) / slices) * exposureS) * filmFps * blades;
    if (periods - Math.floor(periods) < openShare) lit++;
  }
  return (lit / slices) * exposureS;
}

function slowModulation(light: Chopper, exposureS: number): number {
  const caught = Array.from({ length: 400 }, (_, i) =>
    lightCaught(light, i / 400 / flickerHz(light), exposureS),
  );
  const [most, least] = [Math.max(...caught), Math.min(...caught)];
  return (most - least) / (most + least);
}

describe('shutter', () => {
  it.each(shutterRows)('%i blades, %d fps, camera %i fps', (blades, fps, camera, flicker, exposure, beat) => {
    const light = chopper(fps, blades);
    expect(flickerHz(light)).toBeCloseTo(flicker, 9);
    expect(beatHz(light, camera)).toBeCloseTo(beat, 9);
    const [shortest] = flickerFreeExposuresS(light, camera);
    expect(1 / shortest).toBeCloseTo(exposure, 9);
  });

  it('1/36 fits into a frame of 25 fps, not into one of 50', () => {
    expect(flickerFreeExposuresS(chopper(18, 2), 25)).toHaveLength(1);
    expect(flickerFreeExposuresS(chopper(18, 2), 50)).toEqual([]);
  });

  it('every flicker-free exposure fits into the frame and leaves nothing', () => {
    for (const [blades, fps, camera] of shutterRows)
      for (const exposureS of flickerFreeExposuresS(chopper(fps, blades), camera)) {
        expect(shutterAngle(exposureS, camera)).toBeLessThanOrEqual(360 + 1e-6);
        expect(flickerLeft(chopper(fps, blades), exposureS)).toEqual({ modulation: 0, stops: 0 });
      }
  });

  it('flicker left agrees with light summed slice by slice', () => {
    const random = seededRandom(7);
    for (let i = 0; i < 20; i++) {
      const light = chopper(14 + 12 * random(), 1 + Math.floor(4 * random()), 0.3 + 0.5 * random());
      const exposureS = 1 / (20 + 200 * random());
      // slices of 1/4000 of the exposure and 1/400 of the period
      expect(
        Math.abs(flickerLeft(light, exposureS).modulation - slowModulation(light, exposureS)),
      ).toBeLessThan(0.03);
    }
  });

  it('an exposure that can fall into the dark altogether swings without bound', () => {
    expect(flickerLeft(chopper(18, 3), 1 / 200).stops).toBe(Infinity);
  });

  it('a light that is never chopped does not flicker', () => {
    expect(flickerLeft(chopper(18, 3, 1), 1 / 50).modulation).toBeCloseTo(0, 12);
  });

  it('the nearest offered speed is the nearest in stops', () => {
    const nearest = nearestOffered(chopper(18, 3), 1 / 54, [1 / 25, 1 / 50, 1 / 60, 1 / 100]);
    expect(nearest.exposureS).toBe(1 / 50);
    expect(nearest.periods).toBeCloseTo(1.08, 12);
    // one whole pulse is open for 0.5, and 0.08 of the next may add to it
    expect(nearest.modulation).toBeCloseTo(0.08 / 1.08, 12);
  });

  it('18 fps with three blades trims to 16 2/3 for 25 fps, 7.4 % slower, 1/50 s', () => {
    const trim = speedTrim(chopper(18, 3), 25);
    expect(trim.filmFps).toBeCloseTo(50 / 3, 12);
    expect(trim.change).toBeCloseTo(-0.074074, 6);
    expect(trim.exposureS).toBe(1 / 50);
    expect(beatHz(chopper(trim.filmFps, 3), 25)).toBeCloseTo(0, 9);
  });
});

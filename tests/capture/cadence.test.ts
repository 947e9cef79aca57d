import { describe, expect, it } from 'vitest';
import { cadence } from '../../src/capture/cadence.js';
import type { Chopper } from '../../src/capture/shutter.js';
import { seededRandom } from '../../src/maths/random.js';

/** Which film frames light one video frame, walked through in thin slices of time: the slow plain version. */
function seenFrom(light: Chopper, startS: number, exposureS: number): Set<number> {
  const seen = new Set<number>();
  for (let i = 0; i < 300; i++) {
    const periods = (startS + ((i + 0.5) / 300) * exposureS) * light.filmFps * light.blades;
    // The dark stretch ends each period, so the last one of a frame is the pull-down.
    if (periods - Math.floor(periods) < light.openShare) seen.add(Math.floor(periods / light.blades + 1e-9));
  }
  return seen;
}

function slowCadence(light: Chopper, cameraFps: number, exposureS: number) {
  const videoFrames = 20000;
  const all = new Set<number>();
  let [blended, duplicated] = [0, 0];
  let before = new Set<number>();
  for (let k = 0; k < videoFrames; k++) {
    const seen = seenFrom(light, k / cameraFps, exposureS);
    if (seen.size > 1) blended++;
    for (const frame of seen) all.add(frame);
    if (seen.size === 1 && before.size === 1 && [...seen].every((frame) => before.has(frame))) duplicated++;
    before = seen;
  }
  const filmFrames = (videoFrames / cameraFps) * light.filmFps;
  const share = (count: number) => count / videoFrames;
  return {
    blended: share(blended),
    duplicated: share(duplicated),
    lost: Math.max(0, 1 - all.size / filmFrames),
  };
}

describe('cadence', () => {
  it('16 2/3 in 25: two film frames last three video frames, of which half of the phases blend one', () => {
    const result = cadence({ filmFps: 50 / 3, blades: 3, openShare: 0.5 }, 25, 1 / 50);
    expect(result.pattern).toEqual({ filmFrames: 2, videoFrames: 3 });
    // Of three video frames the third is a copy in one half of the phases, and a blend in the other.
    expect(result.duplicated).toBeCloseTo(1 / 6, 12);
    expect(result.blended).toBeCloseTo(1 / 6, 12);
    expect(result.lost).toBe(0);
  });

  it('frame for frame when the rates are equal', () => {
    const result = cadence({ filmFps: 25, blades: 2, openShare: 0.5 }, 25, 1 / 50);
    expect(result.pattern).toEqual({ filmFrames: 1, videoFrames: 1 });
    expect(result.duplicated).toBe(0);
  });

  it('no pattern for rates that drift', () => {
    expect(cadence({ filmFps: 17.93, blades: 3, openShare: 0.5 }, 25, 1 / 54).pattern).toBeUndefined();
  });

  it('24 film frames at 12 fps: 7 of 12 are seen, one video frame in 6 sees two', () => {
    const result = cadence({ filmFps: 24, blades: 3, openShare: 0.5 }, 12, 1 / 72);
    expect(result.blended).toBeCloseTo(1 / 6, 9);
    expect(result.lost).toBeCloseTo(1 - 7 / 12, 9);
  });

  it('agrees with frames walked through slice by slice, rates drifting', () => {
    const random = seededRandom(11);
    for (let i = 0; i < 6; i++) {
      const light = {
        filmFps: 15.137 + 20 * random(),
        blades: 2 + Math.floor(2 * random()),
        openShare: 0.4 + 0.3 * random(),
      };
      const exposureS = 1 / (light.blades * light.filmFps);
      const cameraFps = Math.min(12.3 + 20 * random(), 1 / exposureS);
      const fast = cadence(light, cameraFps, exposureS);
      const slow = slowCadence(light, cameraFps, exposureS);
      // 20000 video frames over evenly spread phases, 300 slices each
      expect(Math.abs(fast.blended - slow.blended)).toBeLessThan(0.01);
      expect(Math.abs(fast.duplicated - slow.duplicated)).toBeLessThan(0.01);
      expect(Math.abs(fast.lost - slow.lost)).toBeLessThan(0.01);
    }
  });
});

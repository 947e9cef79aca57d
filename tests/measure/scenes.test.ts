import { describe, expect, it } from 'vitest';
import type { Triple } from '../../src/maths/matrix3.js';
import { normalRandom, seededRandom } from '../../src/maths/random.js';
import { measureReel } from '../../src/measure/index.js';
import { scenesOf } from '../../src/measure/scenes.js';
import type { Picture } from '../../src/picture/picture.js';
import { frame } from './filmed.js';

const dyes = 'reversal-late' as const;
const openGate = 0.9;
/** Light of a small scene about a tone, with noise of its own. */
function lightOf(tone: number, seed: number, noise = 0.003): Float64Array {
  const random = seededRandom(seed);
  return Float64Array.from(
    { length: 3 * 900 },
    (_, i) =>
      openGate * Math.max(1e-4, 10 ** -(tone + 0.9 * ((i % 90) / 90)) * (1 + noise * normalRandom(random))),
  );
}

describe('scenes', () => {
  it('groups copies with other noise, wherever they stand, and keeps others apart', () => {
    const light = [lightOf(0.1, 1), lightOf(1.4, 2), lightOf(0.1, 3), lightOf(0.1, 4)];
    const scenes = scenesOf(light, openGate).map((scene) => [...scene].sort());
    expect(scenes).toContainEqual([0, 2, 3]);
    expect(scenes).toContainEqual([1]);
  });

  it('joins what a third still shows to be one', () => {
    // each shares five sixths with its neighbour, the outer two two thirds
    const light = [0.1, 0.25, 0.4].map((tone, n) => lightOf(tone, n, 0));
    expect(scenesOf([light[0], light[2]], openGate)).toHaveLength(2);
    expect(scenesOf(light, openGate)).toHaveLength(1);
  });

  it('puts every still into one scene', () => {
    const light = [1, 2, 3, 4, 5].map((n) => lightOf(0.3 * n, n));
    expect(scenesOf(light, openGate).flat().sort()).toEqual([0, 1, 2, 3, 4]);
    expect(scenesOf([], openGate)).toEqual([]);
  });
});

/** A still as a second reading of the same frame: noise of half a code of 8 bits. */
function readAgain(still: Picture, seed: number): Picture {
  const random = seededRandom(seed);
  const data = still.data.map((v) =>
    Math.min(65535, Math.max(0, Math.round(v + 128 * normalRandom(random)))),
  );
  return { ...still, data } as Picture;
}

describe('evidence of one scene', () => {
  /** Probabilities move this much by noise alone. */
  const sameWithin = 0.1;
  it('does not grow with the copies of a still', () => {
    const loss: Triple = [0.03, 0.1, 0.22];
    const still = frame(3, { dyes, loss });
    const measured = (pictures: readonly Picture[]) =>
      measureReel(
        pictures.map((picture, n) => ({ name: `still ${n}`, picture })),
        { encoding: 'srgb', dyes },
      );
    const once = measured([still]);
    const copies = measured([1, 2, 3, 4].map((seed) => readAgain(still, seed)));
    expect(Math.abs(copies.kinds['good-order'] - once.kinds['good-order'])).toBeLessThan(sameWithin);
    expect(copies.uncertainty.loss.yellow).toBeGreaterThan(0.8 * once.uncertainty.loss.yellow);
    expect(copies.confidence.reasons.join()).toContain('the stills show one scene');
  });
});

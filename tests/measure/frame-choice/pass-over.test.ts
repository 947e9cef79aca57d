import { describe, expect, it } from 'vitest';
import {
  type FrameSample,
  passOver,
  type PassOverReason,
} from '../../../src/measure/frame-choice/pass-over.js';
import { frameDifference, frameTraits } from '../../../src/measure/frame-choice/traits.js';
import type { Picture } from '../../../src/picture/picture.js';
import { draw, height, scene, width } from './scenes.js';

/** Frames one after the other, as a reel has them; the first and last have only one beside them. */
function samplesOf(frames: readonly Picture[]): FrameSample[] {
  const traits = frames.map(frameTraits);
  const step = (a: number, b: number) => (traits[a] && traits[b] ? frameDifference(traits[a], traits[b]) : 0);
  return traits.map((own, i) => ({
    index: i,
    traits: own,
    fromBefore: step(i - 1, i),
    fromAfter: step(i, i + 1),
  }));
}

/** A quiet scene of so many frames, hand-held. */
const shot = (kind: number, frames = 12) =>
  Array.from({ length: frames }, (_, i) => scene(kind, i % 2, { seed: 10 * kind + i }));

const isHole = (x: number, y: number) => x > 20 && x < 45 && y > 40 && y < 80;
const isScratch = (x: number) => x === 30 || x === 31 || x === 90;
const odd: Record<string, { picture: Picture; reason: PassOverReason }> = {
  'black leader': { picture: draw(() => [0.02, 0.02, 0.02]), reason: 'black' },
  'white leader': { picture: draw(() => [0.97, 0.96, 0.94]), reason: 'white' },
  'black leader with scratches': {
    picture: draw((x) => (isScratch(x) ? [0.9, 0.9, 0.9] : [0.04, 0.04, 0.05])),
    reason: 'black',
  },
  'light leader with a perforation': {
    picture: draw((x, y) => (isHole(x, y) ? [1, 1, 1] : [0.6, 0.55, 0.5])),
    reason: 'leader',
  },
  'leader with many scratches': {
    picture: draw((x) => (x % 11 === 0 ? [0.9, 0.9, 0.8] : [0.3, 0.1, 0.08])),
    reason: 'leader',
  },
  'a frame line in the middle': {
    picture: (() => {
      const picture = scene(1);
      picture.data.fill(1000, 3 * width * 55, 3 * width * 61);
      return picture;
    })(),
    reason: 'torn',
  },
  'another scene for one frame': { picture: scene(7), reason: 'torn' },
  'a blurred frame': { picture: scene(1, 0, { soft: 6 }), reason: 'blurred' },
  'a burnt-out frame': { picture: scene(1, 0, { light: 1.35 }), reason: 'burnt' },
};

describe('frames that are passed over', () => {
  it('none of quiet shots, but those beside a cut', () => {
    const { good, passedOver } = passOver(samplesOf([...shot(1), ...shot(2), ...shot(3)]));
    expect(passedOver).toEqual({ torn: 4 });
    expect(good.map(({ index }) => index)).not.toContain(11);
    expect(good).toHaveLength(32);
  });

  it.each(Object.keys(odd))('%s', (name) => {
    const { picture, reason } = odd[name];
    // As the same shot holds still, but for the one frame: its neighbours are as usual.
    const samples = samplesOf([...shot(1), ...shot(2)]).filter(({ index }) => index !== 11 && index !== 12);
    const alone = name.startsWith('another') || name.startsWith('a frame line');
    const traits = frameTraits(picture);
    const beside = alone ? frameDifference(traits, frameTraits(scene(1))) : 0;
    const one = { index: 99, traits, fromBefore: beside, fromAfter: beside };
    const { good, passedOver } = passOver([...samples, one]);
    expect(passedOver).toEqual({ [reason]: 1 });
    expect(good).toHaveLength(samples.length);
  });

  it('nothing of nothing', () => {
    expect(passOver([])).toEqual({ good: [], passedOver: {} });
    expect(frameTraits(draw(() => [0, 0, 0])).darkBar).toBeCloseTo(0.8, 1);
    expect(height).toBeLessThan(width);
  });
});

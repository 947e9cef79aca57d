import type { FrameSample } from './pass-over.js';
import { frameDifference } from './traits.js';

/** A difference in looks that counts as much as a frame's fair share of the reel. */
const fullDifference = 0.12;

/** What a frame adds to one that is chosen already: different looks, and distance along the reel, each counted up to 1. */
function worth(a: FrameSample, b: FrameSample, fairShare: number): number {
  const looks = Math.min(1, frameDifference(a.traits, b.traits) / fullDifference);
  const distance = Math.min(1, Math.abs(a.index - b.index) / fairShare);
  return looks + distance;
}

/**
 * Chooses frames spread over the reel and different from each other: the sharpest of the middle first, then always the one
 * that adds most to the nearest of those chosen.
 * @param frames of the whole clip
 * @returns `count` frames, or all there are, in the reel's order
 */
export function chooseSpread(samples: readonly FrameSample[], count: number, frames: number): FrameSample[] {
  if (samples.length <= count) return [...samples];
  const fairShare = frames / count;
  const middle = samples[samples.length >> 1].index;
  const near = samples.filter(({ index }) => Math.abs(index - middle) <= fairShare / 2);
  const detail = ({ traits }: FrameSample) => traits.sharpness[0] + traits.sharpness[1];
  const first = near.reduce((best, sample) => (detail(sample) > detail(best) ? sample : best));
  const chosen = [first];
  // What each would add; below 0 for those that are chosen.
  const least = samples.map((sample) => (sample === first ? -1 : worth(sample, first, fairShare)));
  while (chosen.length < count) {
    const next = least.indexOf(least.reduce((most, value) => Math.max(most, value), -Infinity));
    chosen.push(samples[next]);
    samples.forEach((sample, i) => (least[i] = Math.min(least[i], worth(sample, samples[next], fairShare))));
    least[next] = -1;
  }
  return chosen.sort((a, b) => a.index - b.index);
}

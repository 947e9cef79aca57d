import { countLevels, levelsOf } from '../picture/level-counts.js';
import { expandGrey, type Picture } from '../picture/picture.js';
import { speckShare } from './still-light.js';

/** The highest level at which pixels pile up, with next to none above. */
interface Pile {
  /** Share of the scale, 0..1. */
  readonly end: number;
  readonly mean: number;
}

/** Pixels above the pile may be so few: sharpening, hot pixels. */
const strayShare = 1e-4;

function pileOf(picture: Picture): Pile | undefined {
  const lastLevel = levelsOf(picture) - 1;
  const channels = [0, 1, 2].map((channel) => countLevels(picture, channel));
  const sums = channels[0].counts.map((_, level) =>
    channels.reduce((sum, { counts }) => sum + counts[level], 0),
  );
  const total = sums.reduce((sum, count) => sum + count, 0);
  let above = 0;
  let top = lastLevel;
  while (top > 0 && (above += sums[top]) <= strayShare * total) top--;
  if (sums[top] + (sums[top - 1] ?? 0) < speckShare * total) return undefined;
  const mean = sums.reduce((sum, count, level) => sum + level * count, 0) / Math.max(1, total) / lastLevel;
  return { end: top / lastLevel, mean };
}

/** Ends nearer than this are one, and means further apart belong to two exposures; shares of the scale. */
const sameEnd = 1.1 / 255;
const otherExposure = 0.03;

/**
 * The end of the scale as a camera really uses it: many never reach the last code, log curves least of all. Where stills of
 * clearly different exposure pile up at one and the same level, that is where its channels end.
 * @returns share of the scale, 0..1; undefined when the stills do not show one
 */
export function commonEnd(stills: readonly Picture[]): number | undefined {
  const piles = stills.map((still) => pileOf(expandGrey(still))).filter((pile) => pile !== undefined);
  const pairs = piles.flatMap((a, i) => piles.slice(i + 1).map((b) => [a, b] as const));
  const same = pairs.filter(
    ([a, b]) => Math.abs(a.end - b.end) <= sameEnd && Math.abs(a.mean - b.mean) >= otherExposure,
  );
  return same.length === 0 ? undefined : Math.min(...same.flatMap(([a, b]) => [a.end, b.end]));
}

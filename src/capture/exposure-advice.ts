import type { Triple } from '../maths/matrix3.js';
import type { StillExposure } from './exposure-test.js';
import { speckShare } from './still-light.js';

export type Advice =
  /** One of the stills is right. */
  | 'take'
  /** The best of them leaves room that the sensor could use. */
  | 'take-or-go-up'
  /** None keeps enough room for brighter frames: the best is named, a lower one would be safer. */
  | 'take-or-go-down'
  /** They are not of one frame: nothing can be said. */
  | 'not-one-frame'
  /** All that show anything are burnt out. */
  | 'go-down'
  /** None shows anything. */
  | 'no-light';

/** Limits of the advice (common practice, no source). */
export const exposureLimits = {
  /** Frames to come may be brighter than this one, by about a third of a stop. */
  leastHeadroomStops: 0.3,
  /** More room than this is light not used. */
  mostHeadroomStops: 1.3,
  /** Noise nearer than this is the same. */
  sameNoiseRatio: 1.08,
} as const;

/** Whether a still has lost highlights, by more than specks. */
export const isBurntOut = ({ burntOutPercent }: Pick<StillExposure, 'burntOutPercent'>) =>
  Math.max(...burntOutPercent) > 100 * speckShare;

/** One figure for the noise of three channels: the root of their mean square. */
export const overallNoise = ([r, g, b]: Triple): number => Math.hypot(r, g, b) / Math.sqrt(3);

const noiseOf = ({ shadowNoisePercent }: StillExposure) =>
  shadowNoisePercent === undefined ? Infinity : overallNoise(shadowNoisePercent);

/** The index for which a figure is highest; the first of several. @param among not empty */
const highest = (among: readonly number[], figure: (i: number) => number) =>
  among.reduce((best, i) => (figure(i) > figure(best) ? i : best));

/** The cleanest shadows; among those as clean, the most headroom. Without a noise to go by, what uses the scale best. */
function cleanest(stills: readonly StillExposure[], safe: readonly number[]): number {
  const room = (i: number) => stills[i].headroomStops ?? 0;
  const least = Math.min(...safe.map((i) => noiseOf(stills[i])));
  if (!Number.isFinite(least)) return highest(safe, (i) => -room(i));
  const near = safe.filter((i) => noiseOf(stills[i]) <= least * exposureLimits.sameNoiseRatio);
  return highest(near, room);
}

/** Which still to take, by its index, and what else to say. @param stills not empty */
export function adviceFor(stills: readonly StillExposure[]): { take: number; advice: Advice } {
  const { leastHeadroomStops, mostHeadroomStops } = exposureLimits;
  const all = [...stills.keys()];
  const room = (i: number) => stills[i].headroomStops ?? -Infinity;
  const burnt = all.filter((i) => isBurntOut(stills[i]));
  const whole = all.filter((i) => !isBurntOut(stills[i]) && room(i) >= 0);
  const safe = whole.filter((i) => room(i) >= leastHeadroomStops);
  if (safe.length > 0) {
    const take = cleanest(stills, safe);
    // A brighter one among the safe has shown already that more light makes the shadows no cleaner.
    const brightest = safe.every((i) => room(i) >= room(take));
    return { take, advice: brightest && room(take) > mostHeadroomStops ? 'take-or-go-up' : 'take' };
  }
  if (whole.length > 0) return { take: highest(whole, room), advice: 'take-or-go-down' };
  if (burnt.length === 0) return { take: 0, advice: 'no-light' };
  return { take: highest(burnt, (i) => -Math.max(...stills[i].burntOutPercent)), advice: 'go-down' };
}

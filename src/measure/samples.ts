import { normalRandom, seededRandom } from '../maths/random.js';
import type { Axis } from './film-colours.js';
import type { Ageings } from './losses.js';
import { cholesky } from './square-matrix.js';

/** One way in which the reel may have aged, and how probable it is; the probabilities add up to 1. */
export interface Sample {
  /** What would bring it back. */
  readonly correction: Axis;
  readonly probability: number;
}

/** Ways of ageing less probable than this are passed over. */
export const leastShare = 0.01;
/** Samples of each way of ageing: pairs on either side of the mean, so that the mean is met. */
const pairs = 4;
/** What is left of a dye lies between that of the greatest loss a look can name and all of it. */
const [leastLeft, mostLeft] = [Math.log(0.1), 0];

/** The axis of six numbers, factors first, with losses that a look can name. */
export const correctionOf = (six: readonly number[]): Axis => {
  const factor = (v: number) => Math.min(mostLeft, Math.max(leastLeft, v));
  return { logFactors: [factor(six[0]), factor(six[1]), factor(six[2])], offsets: [six[3], six[4], six[5]] };
};

/** Samples of what is known of a reel's ageing; the same every time. */
export function samplesOf(ageings: Ageings): Sample[] {
  const random = seededRandom(1);
  const likely = Object.values(ageings).filter(({ share }) => share >= leastShare);
  const total = likely.reduce((sum, { share }) => sum + share, 0);
  return likely.flatMap(({ share, mean, covariance }) => {
    const root = cholesky(covariance);
    return Array.from({ length: pairs }, () => {
      const normal = mean.map(() => normalRandom(random));
      const away = root.map((row) => row.reduce((sum, v, j) => sum + v * normal[j], 0));
      return [1, -1].map((side) => ({
        correction: correctionOf(mean.map((v, i) => v + side * away[i])),
        probability: share / total / (2 * pairs),
      }));
    }).flat();
  });
}

import { unfaded } from '../film/fading.js';
import type { AmountCloud } from './density-cloud.js';

/**
 * What the colours of sound reversal film are like, in equivalent dye amounts (dye-space.ts). Film's curves bring
 * every colour back to neutral where the film is clear and where it is black, and let it stray between; most scenes
 * hold near-neutral things, a few stray far (so the tails are heavy: Student's distribution, and an odd colour
 * cannot drag the axis along).
 */
export const filmColours = {
  /** Tone (mean amount) of the clearest picture parts, and of the blackest; softness of both ends. */
  clearest: 0.05,
  blackest: 2.7,
  endSoftness: 0.1,
  /** Deviation of the dyes from their mean at the ends, and what is added half-way. */
  strayAtEnds: 0.06,
  strayBetween: 0.3,
  /**
   * How much further colours stray between amber and blue (cyan against yellow) than the mean of both ways, and less
   * between green and magenta: so do the colours of lights, and of most things in them.
   */
  lengthened: 1.25,
  /** Deviation of a scene's mean colour from neutral half-way, both ways: every scene has its own colour. */
  sceneLean: [0.3, 0.15],
  /** Degrees of freedom of the tails. */
  tail: 3,
  /** The most that a colour beyond an end can cost: noise and scratches lie there too. */
  endCostAtMost: 8,
  /** How many independent colours one still is worth: its thousands of pixels are far from independent. */
  coloursAStill: 10,
  /**
   * How many all stills of a reel are worth at most: stock, camera and whoever filmed are the same in all of them, so they
   * err alike. Taken for independent, four stills spoilt sound reels with confidence.
   */
  coloursAReel: 20,
} as const;

/** How observed amounts follow from sound ones, dye by dye: observed = factor x sound + offset. */
export interface Axis {
  /** Natural logarithms of the three factors (cyan, magenta, yellow). */
  readonly logFactors: readonly [number, number, number];
  readonly offsets: readonly [number, number, number];
}

/** Nothing lost, nothing added. */
export const asRecorded: Axis = { logFactors: [0, 0, 0], offsets: [0, 0, 0] };

/** Amounts (cyan magenta yellow ...) as they were before film faded along an axis: brought back as a look does it. */
export function broughtBack(amounts: Float64Array, { logFactors, offsets }: Axis): Float64Array {
  const losses = logFactors.map((v) => 1 - Math.exp(v));
  return amounts.map((v, i) => unfaded(v - offsets[i % 3], losses[i % 3]));
}

/** What a tone beyond an end costs. */
const beyond = (distance: number) =>
  distance <= 0 ? 0 : Math.min(filmColours.endCostAtMost, (distance / filmColours.endSoftness) ** 2 / 2);
/** How fast that cost grows. */
const beyondGrows = (distance: number, cost: number) =>
  cost > 0 && cost < filmColours.endCostAtMost ? distance / filmColours.endSoftness ** 2 : 0;

/**
 * How far the colours of each still lean half-way between clear and black, as amounts: cyan less yellow (blue against
 * amber), magenta less the mean (green against magenta), two numbers a still.
 */
export type Leans = ArrayLike<number>;

/**
 * Log likelihood of stills if their film faded along the axis: how much the colours, brought back, look like film.
 * Two thirds of the change of volume are counted, those of the two directions in which colours stray; how a scene's
 * tones are spread tells nothing.
 * @param slopes receives the slopes by the six numbers of the axis, factors first, then by those of the leans
 */
export function logLikelihood(
  stills: readonly AmountCloud[],
  { logFactors, offsets }: Axis,
  leans: Leans,
  slopes: Float64Array,
): number {
  const { clearest, blackest, strayAtEnds, strayBetween, lengthened, tail, coloursAStill, coloursAReel } =
    filmColours;
  const [g0, g1, g2] = logFactors.map((v) => Math.exp(-v));
  const [o0, o1, o2] = offsets;
  const power = (tail + 2) / 2;
  const [perAlong, perAcross] = [1 / (2 * lengthened ** 2), 1.5 * lengthened ** 2];
  slopes.fill(0);
  let [total, says] = [0, 0];
  // the innermost loop of the whole measurement: no arrays are made in it
  stills.forEach(({ amounts, weights }, n) => {
    const [leanAlong, leanAcross] = [leans[2 * n], leans[2 * n + 1]];
    for (let i = 0, p = 0; i < weights.length; i++, p += 3) {
      const weight = weights[i];
      const s0 = g0 * (amounts[p] - o0);
      const s1 = g1 * (amounts[p + 1] - o1);
      const s2 = g2 * (amounts[p + 2] - o2);
      const tone = (s0 + s1 + s2) / 3;
      const place = Math.max(0, Math.min(1, tone / blackest));
      const between = 4 * place * (1 - place);
      const betweenGrows = place > 0 && place < 1 ? (4 * (1 - 2 * place)) / blackest : 0;
      const stray = strayAtEnds + strayBetween * between;
      const perStray = 1 / (stray * stray);
      const [along, across] = [s0 - s2 - between * leanAlong, s1 - tone - between * leanAcross];
      const away = (perAlong * along * along + perAcross * across * across) * perStray;
      const tooDark = beyond(tone - blackest);
      const tooClear = beyond(clearest - tone);
      const bent = 1 + away / tail;
      says += weight;
      total -= weight * (Math.log(bent * bent * Math.sqrt(bent) * stray * stray) + tooDark + tooClear);
      const byAway = -power / (tail + away);
      const ends = beyondGrows(clearest - tone, tooClear) - beyondGrows(tone - blackest, tooDark);
      const byDye = 2 * weight * byAway * perStray;
      const [byLeanAlong, byLeanAcross] = [byDye * perAlong * along, byDye * perAcross * across];
      const byStray = (-2 * weight * strayBetween * (byAway * away + 1)) / stray;
      const byBetween = byStray - byLeanAlong * leanAlong - byLeanAcross * leanAcross;
      const byTone = (byBetween * betweenGrows + weight * ends) / 3;
      const [byAlong, byAcross] = [byLeanAlong, byLeanAcross / 3];
      const [b0, b1, b2] = [byTone + byAlong - byAcross, byTone + 2 * byAcross, byTone - byAlong - byAcross];
      slopes[0] -= b0 * s0;
      slopes[1] -= b1 * s1;
      slopes[2] -= b2 * s2;
      slopes[3] -= b0 * g0;
      slopes[4] -= b1 * g1;
      slopes[5] -= b2 * g2;
      slopes[6 + 2 * n] -= between * byLeanAlong;
      slopes[7 + 2 * n] -= between * byLeanAcross;
    }
  });
  const worth = Math.min(coloursAStill, coloursAReel / stills.length);
  const volume = 2 / 3;
  for (let k = 0; k < 3; k++) {
    total -= volume * says * logFactors[k];
    slopes[k] -= volume * says;
  }
  for (let j = 0; j < slopes.length; j++) slopes[j] *= worth;
  return worth * total;
}

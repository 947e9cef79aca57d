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
  /** Degrees of freedom of the tails. */
  tail: 3,
  /** The most that a colour beyond an end can cost: noise and scratches lie there too. */
  endCostAtMost: 8,
  /** How many independent colours one still is worth: its thousands of pixels are far from independent. */
  coloursAStill: 10,
} as const;

/** How observed amounts follow from sound ones, dye by dye: observed = factor x sound + offset. */
export interface Axis {
  /** Natural logarithms of the three factors (cyan, magenta, yellow). */
  readonly logFactors: readonly [number, number, number];
  readonly offsets: readonly [number, number, number];
}

/** Nothing lost, nothing added. */
export const asRecorded: Axis = { logFactors: [0, 0, 0], offsets: [0, 0, 0] };

/** Amounts (cyan magenta yellow ...) as they were before film faded along an axis. */
export function broughtBack(amounts: Float64Array, { logFactors, offsets }: Axis): Float64Array {
  const gains = logFactors.map((v) => Math.exp(-v));
  return amounts.map((v, i) => gains[i % 3] * (v - offsets[i % 3]));
}

/** What a tone beyond an end costs, and how fast the cost grows. */
function beyond(distance: number): readonly [cost: number, slope: number] {
  if (distance <= 0) return [0, 0];
  const cost = (distance / filmColours.endSoftness) ** 2 / 2;
  return cost < filmColours.endCostAtMost
    ? [cost, distance / filmColours.endSoftness ** 2]
    : [filmColours.endCostAtMost, 0];
}

/**
 * Log likelihood of stills if their film faded along the axis: how much the colours, brought back, look like film.
 * Two thirds of the change of volume are counted, those of the two directions in which colours stray; how a scene's
 * tones are spread tells nothing.
 * @param slopes receives the slopes by the six numbers of the axis, factors first
 */
export function logLikelihood(
  stills: readonly AmountCloud[],
  { logFactors, offsets }: Axis,
  slopes: Float64Array,
): number {
  const { clearest, blackest, strayAtEnds, strayBetween, tail, coloursAStill } = filmColours;
  const gains = logFactors.map((v) => Math.exp(-v));
  const sound = [0, 0, 0];
  slopes.fill(0);
  let [total, says] = [0, 0];
  for (const { amounts, weights } of stills)
    for (let i = 0, p = 0; i < weights.length; i++, p += 3) {
      const weight = weights[i];
      for (let k = 0; k < 3; k++) sound[k] = gains[k] * (amounts[p + k] - offsets[k]);
      const tone = (sound[0] + sound[1] + sound[2]) / 3;
      const place = Math.max(0, Math.min(1, tone / blackest));
      const stray = strayAtEnds + strayBetween * 4 * place * (1 - place);
      const strayGrows = place > 0 && place < 1 ? (strayBetween * 4 * (1 - 2 * place)) / blackest : 0;
      const away = ((sound[0] - tone) ** 2 + (sound[1] - tone) ** 2 + (sound[2] - tone) ** 2) / stray ** 2;
      const [tooDark, darkGrows] = beyond(tone - blackest);
      const [tooClear, clearGrows] = beyond(clearest - tone);
      says += weight;
      total +=
        weight * (-((tail + 2) / 2) * Math.log1p(away / tail) - 2 * Math.log(stray) - tooDark - tooClear);
      const byAway = -(tail + 2) / 2 / (tail + away);
      const byTone = (-2 * (byAway * away + 1) * strayGrows) / stray - darkGrows + clearGrows;
      for (let k = 0; k < 3; k++) {
        const bySound = weight * ((byAway * 2 * (sound[k] - tone)) / stray ** 2 + byTone / 3);
        slopes[k] -= bySound * sound[k];
        slopes[3 + k] -= bySound * gains[k];
      }
    }
  const volume = 2 / 3;
  for (let k = 0; k < 3; k++) {
    total -= volume * says * logFactors[k];
    slopes[k] -= volume * says;
  }
  for (let j = 0; j < 6; j++) slopes[j] *= coloursAStill;
  return coloursAStill * total;
}

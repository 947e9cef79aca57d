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
  blackest: 2.6,
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

const beyond = (distance: number): number =>
  distance > 0 ? Math.min(filmColours.endCostAtMost, (distance / filmColours.endSoftness) ** 2 / 2) : 0;

/**
 * Log likelihood of stills if their film faded along the axis: how much the colours, brought back, look like film.
 * Two thirds of the change of volume are counted, those of the two directions in which colours stray; how a scene's
 * tones are spread tells nothing.
 */
export function logLikelihood(stills: readonly AmountCloud[], { logFactors, offsets }: Axis): number {
  const { clearest, blackest, strayAtEnds, strayBetween, tail, coloursAStill } = filmColours;
  const [a, b, c] = logFactors.map((v) => Math.exp(-v));
  let [total, says] = [0, 0];
  for (const { amounts, weights } of stills)
    for (let i = 0, p = 0; i < weights.length; i++, p += 3) {
      const cyan = a * (amounts[p] - offsets[0]);
      const magenta = b * (amounts[p + 1] - offsets[1]);
      const yellow = c * (amounts[p + 2] - offsets[2]);
      const tone = (cyan + magenta + yellow) / 3;
      const place = Math.max(0, Math.min(1, tone / blackest));
      const stray = strayAtEnds + strayBetween * 4 * place * (1 - place);
      const away = ((cyan - tone) ** 2 + (magenta - tone) ** 2 + (yellow - tone) ** 2) / (stray * stray);
      const colour = -((tail + 2) / 2) * Math.log1p(away / tail) - 2 * Math.log(stray);
      says += weights[i];
      total += weights[i] * (colour - beyond(tone - blackest) - beyond(clearest - tone));
    }
  const volume = (2 / 3) * (logFactors[0] + logFactors[1] + logFactors[2]);
  return coloursAStill * (total - volume * says);
}

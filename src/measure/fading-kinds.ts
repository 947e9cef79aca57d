import type { Triple } from '../maths/matrix3.js';

/** A way in which film ages: how often, how much of each dye is left, and how much stain comes with it. */
export interface FadingKind {
  readonly title: string;
  /** Share of reels; the shares add up to 1. */
  readonly share: number;
  /** Natural logarithm of what is left of cyan, magenta, yellow: mean and deviation. */
  readonly logLeft: Triple;
  readonly deviation: Triple;
  /** Stain in blue (equivalent amount of yellow): mean, and deviation. */
  readonly stain: number;
}

/**
 * Shares and sizes are ours. What fades: in the dark mostly cyan, then yellow, magenta least (Reilly 1998, Storage
 * Guide for Color Photographic Materials); losing cyan leaves pink, with yellow gone as well purple; in light mostly
 * magenta; a blue cast comes of lost yellow (common practice). Stain: a few hundredths, most in blue (from memory).
 * The share of reels in good order is high on purpose: the benefit of the doubt, since a sound reel spoilt costs more
 * trust than a mild fading left; but reels are measured because somebody thinks them faded.
 */
export const fadingKinds = {
  'good-order': {
    title: 'in good order',
    share: 0.33,
    logLeft: [0, 0, 0],
    deviation: [0.004, 0.004, 0.004],
    stain: 0.003,
  },
  mild: {
    title: 'mildly faded',
    share: 0.11,
    logLeft: [-0.12, -0.05, -0.1],
    deviation: [0.08, 0.05, 0.08],
    stain: 0.02,
  },
  cyan: {
    title: 'cyan lost, as dark keeping does',
    share: 0.15,
    logLeft: [-0.65, -0.08, -0.17],
    deviation: [0.25, 0.06, 0.1],
    stain: 0.04,
  },
  'cyan-and-yellow': {
    title: 'cyan and yellow lost, as long dark keeping does',
    share: 0.12,
    logLeft: [-0.6, -0.2, -0.5],
    deviation: [0.22, 0.12, 0.22],
    stain: 0.04,
  },
  yellow: {
    title: 'yellow lost, some magenta with it',
    share: 0.14,
    logLeft: [-0.06, -0.06, -0.65],
    deviation: [0.05, 0.06, 0.25],
    stain: 0.04,
  },
  magenta: {
    title: 'magenta lost, as light does',
    share: 0.13,
    logLeft: [-0.1, -0.52, -0.1],
    deviation: [0.07, 0.24, 0.07],
    stain: 0.04,
  },
  stain: {
    title: 'stained yellow, the dyes mostly kept',
    share: 0.02,
    logLeft: [-0.12, -0.06, -0.05],
    deviation: [0.08, 0.05, 0.05],
    stain: 0.12,
  },
} as const satisfies Record<string, FadingKind>;

export type FadingKindName = keyof typeof fadingKinds;

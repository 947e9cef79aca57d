import type { Triple } from '../maths/matrix3.js';
import type { DyeSpace } from './dye-space.js';
import type { OpenGate } from './open-gate.js';

/**
 * How far sound film is from the neutral axis that the generic dyes foresee: every stock's layers, dyes and base, and
 * every camera, stray a little. What strays so is the film's own and must stay. Gaussians.
 */
export interface OwnWays {
  /** Log factors: mean, deviation of each dye's, deviation of what all three share. */
  readonly factorMean: number;
  readonly factor: Triple;
  readonly factorShared: number;
  /** Offsets: mean of each, deviation of each by itself, and of what all share. */
  readonly offsetMean: Triple;
  readonly offset: number;
  readonly offsetShared: number;
  /** What the scenes add: deviation of every number beyond what the fit itself admits. */
  readonly scene: number;
}

/**
 * Of the size that simulated neutrals of many stocks show before many cameras and lights: the generic dyes read them
 * a little too dense, and yellow the least surely, since its peak lies where cameras and lights differ most.
 */
const factors = { factorMean: 0.03, factor: [0.04, 0.04, 0.06], factorShared: 0.04 } as const;

/** Deviations of the offsets, each by itself and shared: base, white balance, level of the open gate. */
const offsets = {
  unseenLight: { offset: 0.035, offsetShared: 0.08 },
  knownLevel: { offset: 0.035, offsetShared: 0.03 },
  seenLight: { offset: 0.02, offsetShared: 0.03 },
} as const;

/** What the bare light tells of a film's own ways: nothing, its level, or its level and colour. */
export function ownWaysOf({ from, whiteBalance }: OpenGate, space: DyeSpace, scene: number): OwnWays {
  if (whiteBalance === undefined)
    return {
      ...factors,
      ...(from === 'given' ? offsets.knownLevel : offsets.unseenLight),
      offsetMean: [0, 0, 0],
      scene,
    };
  const bare = new Float64Array(3);
  const seen = Float64Array.from(whiteBalance);
  space.toAmounts(bare);
  space.toAmounts(seen);
  const offsetMean: Triple = [seen[0] - bare[0], seen[1] - bare[1], seen[2] - bare[2]];
  return { ...factors, ...offsets.seenLight, offsetMean, scene };
}

import type { Triple } from '../maths/matrix3.js';
import { type FadingKind, type FadingKindName, fadingKinds } from './fading-kinds.js';
import type { AxisFit } from './neutral-axis.js';
import { invert, times } from './square-matrix.js';

/** What time took and added, in equivalent dye amounts, with deviations. */
export interface Ageing {
  /** Natural logarithm of what is left of cyan, magenta, yellow. */
  readonly logLeft: Triple;
  readonly logLeftDeviation: Triple;
  readonly stain: Triple;
  readonly stainDeviation: Triple;
  /** How probable each way of ageing is; they add up to 1. */
  readonly kinds: Readonly<Record<FadingKindName, number>>;
}

/**
 * How far sound film is from the neutral axis that the generic dyes foresee: every stock's layers, dyes and base, and
 * every camera, stray a little. What strays so is the film's own and must stay.
 */
export interface OwnWays {
  /** Deviation of a factor by itself, and of what all three share (logarithms). */
  readonly factor: number;
  readonly factorShared: number;
  /** Mean of a sound film's offsets, deviation of each by itself, and of what all share. */
  readonly offsetMean: Triple;
  readonly offset: number;
  readonly offsetShared: number;
  /** What the scenes add: deviation of every number beyond what the fit itself admits. */
  readonly scene: number;
}

/** Covariance of the axis about its ageing: the fit's own, plus what is the film's own way. */
function spread({ axis, covariance }: AxisFit, own: OwnWays): number[][] {
  const out = covariance.map((row, i) => row.map((v, j) => v + (i === j ? own.scene ** 2 : 0)));
  const left = axis.logFactors.map(Math.exp);
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) {
      const same = i === j ? 1 : 0;
      out[i][j] += own.factorShared ** 2 + same * own.factor ** 2;
      out[3 + i][3 + j] += left[i] * left[j] * (own.offsetShared ** 2 + same * own.offset ** 2);
    }
  return out;
}

/** Stain in cyan, magenta, yellow as shares of the stain in blue: it is yellow, a little red, hardly cyan. */
const stainShares = { mean: [0.15, 0.4, 1], deviation: [0.3, 0.5, 1] } as const;

/** One way of ageing held against the axis: Gaussian times Gaussian. */
function update(kind: FadingKind, { axis }: AxisFit, noise: readonly (readonly number[])[], own: OwnWays) {
  const mean = [...kind.logLeft, ...stainShares.mean.map((share) => share * kind.stain)];
  const deviation = [...kind.deviation, ...stainShares.deviation.map((share) => share * kind.stain)];
  const seen = [
    ...axis.logFactors,
    ...axis.offsets.map((v, k) => v - Math.exp(axis.logFactors[k]) * own.offsetMean[k]),
  ];
  const { inverse, logDeterminant } = invert(
    noise.map((row, i) => row.map((v, j) => v + (i === j ? deviation[i] ** 2 : 0))),
  );
  const away = seen.map((v, i) => v - mean[i]);
  const pulled = times(inverse, away);
  const distance = away.reduce((sum, v, i) => sum + v * pulled[i], 0);
  return {
    logEvidence: Math.log(kind.share) - (distance + logDeterminant) / 2,
    mean: mean.map((v, i) => v + deviation[i] ** 2 * pulled[i]),
    variance: deviation.map((v, i) => v ** 2 - v ** 4 * inverse[i][i]),
  };
}

/** Splits the axis that was found into what time did and what is the film's own: the mean over all ways of ageing. */
export function weighLosses(fit: AxisFit, own: OwnWays): Ageing {
  const noise = spread(fit, own);
  const names = Object.keys(fadingKinds) as FadingKindName[];
  const updates = names.map((name) => update(fadingKinds[name], fit, noise, own));
  const top = Math.max(...updates.map(({ logEvidence }) => logEvidence));
  const raw = updates.map(({ logEvidence }) => Math.exp(logEvidence - top));
  const total = raw.reduce((a, b) => a + b, 0);
  const shares = raw.map((v) => v / total);
  const mean = updates[0].mean.map((_, i) => updates.reduce((sum, u, n) => sum + shares[n] * u.mean[i], 0));
  const deviation = mean.map((m, i) =>
    Math.sqrt(updates.reduce((sum, u, n) => sum + shares[n] * (u.variance[i] + (u.mean[i] - m) ** 2), 0)),
  );
  return {
    logLeft: [mean[0], mean[1], mean[2]],
    logLeftDeviation: [deviation[0], deviation[1], deviation[2]],
    stain: [mean[3], mean[4], mean[5]],
    stainDeviation: [deviation[3], deviation[4], deviation[5]],
    kinds: Object.fromEntries(names.map((name, n) => [name, shares[n]])) as Record<FadingKindName, number>,
  };
}

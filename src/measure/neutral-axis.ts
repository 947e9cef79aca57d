import type { Triple } from '../maths/matrix3.js';
import type { AmountCloud } from './density-cloud.js';
import { type Axis, logLikelihood } from './film-colours.js';
import { minimise, type Sloped } from './minimise.js';
import { invert, type Square, times } from './square-matrix.js';

/** A colour whose place on the neutral axis is known: a mark. Equivalent amounts as observed. */
export interface Anchor {
  readonly amounts: Triple;
  /** Mean amount when the film was sound, and its deviation. */
  readonly tone: number;
  readonly toneDeviation: number;
  /** Deviation of the dyes from their mean. */
  readonly stray: number;
}

/** What is known of an axis' six numbers (log factors, offsets) before looking: a Gaussian. */
export interface AxisPrior {
  readonly mean: readonly number[];
  readonly covariance: Square;
}

/** The axis that was found, with the covariance of its six numbers. */
export interface AxisFit {
  readonly axis: Axis;
  readonly covariance: Square;
  /** Log of the evidence, by Laplace's approximation: how well the prior foresaw the stills. */
  readonly logEvidence: number;
}

export const axisOf = (x: readonly number[]): Axis => ({
  logFactors: [x[0], x[1], x[2]],
  offsets: [x[3], x[4], x[5]],
});

/** Negative log likelihood of a mark; its slopes are added to `slopes`. */
function anchorCost({ logFactors, offsets }: Axis, anchor: Anchor, slopes: Float64Array): number {
  const gains = logFactors.map((v) => Math.exp(-v));
  const sound = anchor.amounts.map((v, k) => gains[k] * (v - offsets[k]));
  const tone = (sound[0] + sound[1] + sound[2]) / 3;
  const byTone = (tone - anchor.tone) / anchor.toneDeviation ** 2;
  let away = 0;
  for (let k = 0; k < 3; k++) {
    away += ((sound[k] - tone) / anchor.stray) ** 2;
    const bySound = (sound[k] - tone) / anchor.stray ** 2 + byTone / 3;
    slopes[k] -= bySound * sound[k];
    slopes[3 + k] -= bySound * gains[k];
  }
  return (away + ((tone - anchor.tone) / anchor.toneDeviation) ** 2) / 2;
}

/** Curvature below which a direction counts as unknown. */
const leastCurvature = 5;
/** Step of the differences that curvature is taken from. */
const curvatureStep = 0.02;

/** Curvature of a function from its slopes, symmetric, never flatter than `leastCurvature` along an axis. */
function curvatureOf(f: Sloped, at: readonly number[]): number[][] {
  const slopesAt = (i: number, by: number) => {
    const slopes = new Float64Array(at.length);
    f(
      at.map((v, j) => (i === j ? v + by : v)),
      slopes,
    );
    return slopes;
  };
  const rows = at.map((_, i) => {
    const [above, below] = [slopesAt(i, curvatureStep), slopesAt(i, -curvatureStep)];
    return Array.from(above, (v, j) => (v - below[j]) / (2 * curvatureStep));
  });
  return rows.map((row, i) =>
    row.map((v, j) => (i === j ? Math.max(leastCurvature, v) : (v + rows[j][i]) / 2)),
  );
}

/** Inverse of the curvature; where it is too twisted for that, each number by itself. */
function covarianceOf(curvature: number[][]): { inverse: number[][]; logDeterminant: number } {
  const found = invert(curvature);
  if (found.inverse.every((row, i) => row[i] > 0 && row[i] <= 1 / leastCurvature)) return found;
  return invert(curvature.map((row, i) => row.map((v, j) => (i === j ? v : 0))));
}

/** The neutral axis of a reel: the factors and offsets under which its colours, brought back, look most like film's. */
export function fitNeutralAxis(
  stills: readonly AmountCloud[],
  anchors: readonly Anchor[],
  prior: AxisPrior,
): AxisFit {
  const { inverse: precision, logDeterminant: priorSize } = invert(prior.covariance);
  const objective: Sloped = (x, slopes) => {
    const axis = axisOf(x);
    let value = -logLikelihood(stills, axis, slopes);
    const away = x.map((v, j) => v - prior.mean[j]);
    const pulled = times(precision, away);
    for (let j = 0; j < 6; j++) {
      slopes[j] = pulled[j] - slopes[j];
      value += (away[j] * pulled[j]) / 2;
    }
    for (const anchor of anchors) value += anchorCost(axis, anchor, slopes);
    return value;
  };
  const { at, value } = minimise(objective, prior.mean);
  const { inverse: covariance, logDeterminant } = covarianceOf(curvatureOf(objective, at));
  return { axis: axisOf(at), covariance, logEvidence: -value - (priorSize + logDeterminant) / 2 };
}

import type { Triple } from '../maths/matrix3.js';
import type { AmountCloud } from './density-cloud.js';
import { type Axis, filmColours, type Leans, logLikelihood } from './film-colours.js';
import { minimise, type Sloped } from './minimise.js';
import { invert, type Square, times } from './square-matrix.js';

/** A colour of which is known what it was when the film was sound: a mark. Equivalent amounts. */
export interface Anchor {
  /** As observed. */
  readonly amounts: Triple;
  /** When the film was sound: mean, and the inverse of the covariance. */
  readonly mean: Triple;
  readonly precision: Square;
}

/** What is known of an axis' six numbers (log factors, offsets) before looking: a Gaussian. */
export interface AxisPrior {
  readonly mean: readonly number[];
  readonly covariance: Square;
}

/** The axis that was found, with the covariance of its six numbers. */
export interface AxisFit {
  readonly axis: Axis;
  readonly leans: Leans;
  readonly covariance: Square;
  /** Log of the evidence, by Laplace's approximation: how well the prior foresaw the stills. */
  readonly logEvidence: number;
}

export const axisOf = (x: readonly number[]): Axis => ({
  logFactors: [x[0], x[1], x[2]],
  offsets: [x[3], x[4], x[5]],
});

/** Negative log likelihood of a mark as observed (so the factors count as well); its slopes are added to `slopes`. */
function anchorCost({ logFactors, offsets }: Axis, anchor: Anchor, slopes: Float64Array): number {
  const gains = logFactors.map((v) => Math.exp(-v));
  const sound = anchor.amounts.map((v, k) => gains[k] * (v - offsets[k]));
  const away = sound.map((v, k) => v - anchor.mean[k]);
  const pulled = times(anchor.precision, away);
  let value = 0;
  for (let k = 0; k < 3; k++) {
    value += (away[k] * pulled[k]) / 2 + logFactors[k];
    slopes[k] += 1 - pulled[k] * sound[k];
    slopes[3 + k] -= pulled[k] * gains[k];
  }
  return value;
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
  const { inverse: precision, logDeterminant: axisSize } = invert(prior.covariance);
  const leanDeviations = stills.flatMap(() => filmColours.sceneLean);
  const objective: Sloped = (x, slopes) => {
    const axis = axisOf(x);
    const leans = x.slice(6);
    let value = -logLikelihood(stills, axis, leans, slopes);
    const away = prior.mean.map((v, j) => x[j] - v);
    const pulled = times(precision, away);
    for (let j = 0; j < 6; j++) {
      slopes[j] = pulled[j] - slopes[j];
      value += (away[j] * pulled[j]) / 2;
    }
    leans.forEach((lean, j) => {
      const byLean = lean / leanDeviations[j] ** 2;
      slopes[6 + j] = byLean - slopes[6 + j];
      value += (lean * byLean) / 2;
    });
    for (const anchor of anchors) value += anchorCost(axis, anchor, slopes);
    return value;
  };
  const { at, value } = minimise(objective, [...prior.mean, ...leanDeviations.map(() => 0)]);
  const { inverse, logDeterminant } = covarianceOf(curvatureOf(objective, at));
  const priorSize = leanDeviations.reduce((total, v) => total + 2 * Math.log(v), axisSize);
  return {
    axis: axisOf(at),
    leans: at.slice(6),
    covariance: inverse.slice(0, 6).map((row) => row.slice(0, 6)),
    logEvidence: -value - (priorSize + logDeterminant) / 2,
  };
}

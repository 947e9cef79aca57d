import type { Triple } from '../maths/matrix3.js';
import type { AmountCloud } from './density-cloud.js';
import { type Axis, logLikelihood } from './film-colours.js';
import { minimise } from './minimise.js';
import { curvature, invert } from './square-matrix.js';

/** A colour whose place on the neutral axis is known: a mark. Equivalent amounts as observed. */
export interface Anchor {
  readonly amounts: Triple;
  /** Mean amount when the film was sound, and its deviation. */
  readonly tone: number;
  readonly toneDeviation: number;
  /** Deviation of the dyes from their mean. */
  readonly stray: number;
}

/** What is known of the axis' offsets before looking: those of the bare light, and how well. */
export interface OffsetKnowledge {
  readonly mean: Triple;
  /** Deviation of what all three share (the level of the open gate), and of each by itself (base, white balance). */
  readonly shared: number;
  readonly own: number;
}

/** The axis that was found, with the covariance of its six numbers (log factors, offsets). */
export interface AxisFit {
  readonly axis: Axis;
  readonly covariance: readonly (readonly number[])[];
  /** Log likelihood with all that was known before: what dye sets are compared by. */
  readonly score: number;
}

/**
 * One dye at least keeps nearly all it had, as the three never fade alike (Reilly 1998; common practice): the greatest
 * factor lies about here. It alone tells a faded picture from one of little contrast.
 */
const greatestFactor = { logMean: -0.03, deviation: 0.06 };
/** Scale of the log factors, heavy tailed: a dye may also be all but gone. */
const factorScale = 0.3;

const axisOf = (x: readonly number[]): Axis => ({
  logFactors: [x[0], x[1], x[2]],
  offsets: [x[3], x[4], x[5]],
});

function logPrior({ logFactors, offsets }: Axis, { mean, shared, own }: OffsetKnowledge): number {
  const sharpness = 12;
  const greatest = Math.log(logFactors.reduce((sum, v) => sum + Math.exp(sharpness * v), 0)) / sharpness;
  const away = offsets.map((v, k) => v - mean[k]);
  const together = (away[0] + away[1] + away[2]) / 3;
  let sum = -(((greatest - greatestFactor.logMean) / greatestFactor.deviation) ** 2) / 2;
  sum -= (together / shared) ** 2 / 2;
  for (let k = 0; k < 3; k++)
    sum -= 2 * Math.log1p((logFactors[k] / factorScale) ** 2 / 3) + ((away[k] - together) / own) ** 2 / 2;
  return sum;
}

function logAnchor({ logFactors, offsets }: Axis, anchor: Anchor): number {
  const sound = anchor.amounts.map((v, k) => (v - offsets[k]) * Math.exp(-logFactors[k]));
  const tone = (sound[0] + sound[1] + sound[2]) / 3;
  const away = sound.reduce((sum, v) => sum + (v - tone) ** 2, 0) / anchor.stray ** 2;
  return -(away + ((tone - anchor.tone) / anchor.toneDeviation) ** 2) / 2;
}

/** Log factors to start from: nothing lost, and the ways in which film is known to fade. */
const starts: readonly Triple[] = [
  [0, 0, 0],
  [-0.5, 0, -0.1],
  [0, 0, -0.5],
  [0, -0.5, 0],
  [-0.5, -0.1, -0.4],
];

/** Curvature below which a direction counts as unknown: a deviation of about 0.45. */
const leastCurvature = 5;

/** Inverse of the curvature; where the top is too flat or twisted for that, each number by itself. */
function covarianceOf(objective: (x: readonly number[]) => number, at: readonly number[]): number[][] {
  const bent = curvature(objective, at, 0.03);
  bent.forEach((row, i) => (row[i] = Math.max(row[i], leastCurvature)));
  const { inverse } = invert(bent);
  const sane = inverse.every((row, i) => row[i] > 0 && row[i] < 1);
  return sane ? inverse : bent.map((row, i) => row.map((v, j) => (i === j ? 1 / v : 0)));
}

/** The neutral axis of a reel: the factors and offsets under which its colours, brought back, look most like film's. */
export function fitNeutralAxis(
  stills: readonly AmountCloud[],
  anchors: readonly Anchor[],
  knowledge: OffsetKnowledge,
): AxisFit {
  const objective = (x: readonly number[]) => {
    const axis = axisOf(x);
    const marks = anchors.reduce((sum, anchor) => sum + logAnchor(axis, anchor), 0);
    return -logLikelihood(stills, axis) - logPrior(axis, knowledge) - marks;
  };
  const rough = starts.map((start) =>
    minimise(objective, [...start, ...knowledge.mean], [0.1, 0.1, 0.1, 0.05, 0.05, 0.05], { most: 250 }),
  );
  const best = rough.reduce((a, b) => (b.value < a.value ? b : a));
  const { at, value } = minimise(objective, best.at, [0.03, 0.03, 0.03, 0.02, 0.02, 0.02]);
  return { axis: axisOf(at), covariance: covarianceOf(objective, at), score: -value };
}

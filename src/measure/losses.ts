import type { AmountCloud } from './density-cloud.js';
import { type FadingKind, type FadingKindName, fadingKinds } from './fading-kinds.js';
import { type Anchor, type AxisFit, type AxisPrior, fitNeutralAxis } from './neutral-axis.js';
import type { OwnWays } from './own-ways.js';
import { block, invert, product, type Square, sum, times, transposed, twoBlocks } from './square-matrix.js';

/** What time took and added, in equivalent dye amounts, for one way of ageing. */
export interface Ageing {
  /** How probable this way is; over all they add up to 1. */
  readonly share: number;
  /** Natural logarithm of what is left of cyan, magenta, yellow, then the offsets to take out: mean and covariance. */
  readonly mean: readonly number[];
  readonly covariance: Square;
}

/** Everything that is known of a reel's ageing: every way of ageing with its share. */
export type Ageings = Readonly<Record<FadingKindName, Ageing>>;

/** Stain in cyan, magenta, yellow as shares of the stain in blue: it is yellow, a little red, hardly cyan. */
const stainShares = { mean: [0.15, 0.4, 1], deviation: [0.3, 0.5, 1] } as const;

/** The Gaussians that meet in an axis: losses and stain of a way of ageing, factors and offsets of the film's own. */
function parts(kind: FadingKind, own: OwnWays) {
  const same = (i: number, j: number) => Number(i === j);
  const scene = own.scene ** 2;
  return {
    loss: block(3, (i, j) => same(i, j) * kind.deviation[i] ** 2),
    factor: block(3, (i, j) => own.factorShared ** 2 + same(i, j) * (own.factor[i] ** 2 + scene)),
    stain: block(3, (i, j) => same(i, j) * (kind.stain * stainShares.deviation[i]) ** 2),
    offset: block(3, (i, j) => own.offsetShared ** 2 + same(i, j) * (own.offset ** 2 + scene)),
    stainMean: stainShares.mean.map((share) => share * kind.stain),
  };
}

function priorOf(kind: FadingKind, own: OwnWays): AxisPrior {
  const { loss, factor, stain, offset, stainMean } = parts(kind, own);
  const [factors, offsets] = [sum(loss, factor), sum(stain, offset)];
  return {
    mean: [...kind.logLeft.map((v) => v + own.factorMean), ...stainMean.map((v, k) => v + own.offsetMean[k])],
    covariance: twoBlocks(factors, offsets),
  };
}

/** The rest of a part's Gaussian once its sum with another is known: covariance less what the sum tells. */
const rest = (part: Square, pull: Square) =>
  part.map((row, i) => row.map((v, j) => v - product(pull, part)[i][j]));

/**
 * Splits an axis into what time did and what is the film's own. The film's own offset is to stay where it was, though
 * the look will divide it by what is left of the dye: so what the look takes out is the offset seen less its share.
 */
function split(kind: FadingKind, own: OwnWays, { axis, covariance }: AxisFit): Omit<Ageing, 'share'> {
  const { loss, factor, stain, offset, stainMean } = parts(kind, own);
  const lossPull = product(loss, invert(sum(loss, factor)).inverse);
  const ownPull = product(offset, invert(sum(stain, offset)).inverse);
  const lossMean = times(
    lossPull,
    axis.logFactors.map((v, k) => v - own.factorMean - kind.logLeft[k]),
  ).map((v, k) => v + kind.logLeft[k]);
  const left = lossMean.map(Math.exp);
  const ownOffset = times(
    ownPull,
    axis.offsets.map((v, k) => v - own.offsetMean[k] - stainMean[k]),
  ).map((v, k) => v + own.offsetMean[k]);
  // how losses and what is taken out follow the axis, and what stays open once it is known
  const follow = twoBlocks(
    lossPull,
    ownPull.map((row, i) => row.map((v, j) => Number(i === j) - left[i] * v)),
  );
  const [lossRest, offsetRest] = [rest(loss, lossPull), rest(offset, ownPull)];
  const open = twoBlocks(
    lossRest,
    offsetRest.map((row, i) => row.map((v, j) => left[i] * left[j] * v)),
  );
  return {
    mean: [...lossMean, ...axis.offsets.map((v, k) => v - left[k] * ownOffset[k])],
    covariance: sum(product(product(follow, covariance), transposed(follow)), open),
  };
}

/** What stills say of ageing. */
export interface WeighedAgeings {
  readonly ageings: Ageings;
  /** The axis under the likeliest way of ageing. */
  readonly fit: AxisFit;
  /** Log of how well all ways together explain the stills: what dye sets are compared by. */
  readonly logEvidence: number;
}

/** Weighs every way of ageing by how well it explains the stills. */
export function weighAgeings(
  clouds: readonly AmountCloud[],
  anchors: readonly Anchor[],
  own: OwnWays,
): WeighedAgeings {
  const names = Object.keys(fadingKinds) as FadingKindName[];
  const fits = names.map((name) => fitNeutralAxis(clouds, anchors, priorOf(fadingKinds[name], own)));
  const logs = fits.map(({ logEvidence }, n) => logEvidence + Math.log(fadingKinds[names[n]].share));
  const top = Math.max(...logs);
  const raw = logs.map((v) => Math.exp(v - top));
  const total = raw.reduce((a, b) => a + b, 0);
  return {
    ageings: Object.fromEntries(
      names.map((name, n) => [name, { share: raw[n] / total, ...split(fadingKinds[name], own, fits[n]) }]),
    ) as Record<FadingKindName, Ageing>,
    logEvidence: top + Math.log(total),
    fit: fits[logs.indexOf(top)],
  };
}

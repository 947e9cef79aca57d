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

/**
 * How far effective losses of cyan, magenta, yellow stray from what was lost, per unit of the whole loss (length of its
 * logarithms): which wavelengths a camera sees of a dye shifts as the dyes beside it go.
 */
const misfit = [0.1, 0.15, 0.12] as const;

const same = (i: number, j: number) => Number(i === j);

/** What time does in a way of ageing: effective losses and stain. */
function ageingPrior({ logLeft, deviation, stain }: FadingKind): AxisPrior {
  const whole = Math.hypot(...logLeft);
  const spread = [
    ...deviation.map((v, i) => Math.hypot(v, misfit[i] * whole)),
    ...stainShares.deviation.map((share) => stain * share),
  ];
  return {
    mean: [...logLeft, ...stainShares.mean.map((share) => share * stain)],
    covariance: block(6, (i, j) => same(i, j) * spread[i] ** 2),
  };
}

/** What a sound film shows by itself. */
function ownPrior(own: OwnWays): AxisPrior {
  const scene = own.scene ** 2;
  const factor = (i: number, j: number) => own.factorShared ** 2 + same(i, j) * (own.factor[i] ** 2 + scene);
  const offset = (i: number, j: number) => own.offsetShared ** 2 + same(i, j) * (own.offset ** 2 + scene);
  return {
    mean: [own.factorMean, own.factorMean, own.factorMean, ...own.offsetMean],
    covariance: twoBlocks(block(3, factor), block(3, offset)),
  };
}

const together = (a: AxisPrior, b: AxisPrior): AxisPrior => ({
  mean: a.mean.map((v, i) => v + b.mean[i]),
  covariance: sum(a.covariance, b.covariance),
});

/**
 * Splits an axis into what time did and what is the film's own. The film's own offset is to stay where it was, though
 * the look will divide it by what is left of the dye: so what the look takes out is the offset seen less its share.
 */
function split(aged: AxisPrior, own: AxisPrior, { axis, covariance }: AxisFit): Omit<Ageing, 'share'> {
  const both = together(aged, own);
  const pull = product(aged.covariance, invert(both.covariance).inverse);
  const seen = [...axis.logFactors, ...axis.offsets];
  const pulled = times(
    pull,
    seen.map((v, i) => v - both.mean[i]),
  );
  const byTime = aged.mean.map((v, i) => v + pulled[i]);
  // 1 for the losses, what is left of each dye for its offset
  const kept = byTime.map((_, i) => (i < 3 ? 1 : Math.exp(byTime[i - 3])));
  // how losses and what is taken out follow the axis, and what stays open once it is known
  const follow = pull.map((row, i) =>
    row.map((v, j) => (i < 3 ? v : same(i, j) * (1 - kept[i]) + kept[i] * v)),
  );
  const rest = product(pull, aged.covariance);
  const open = block(6, (i, j) => kept[i] * kept[j] * (aged.covariance[i][j] - rest[i][j]));
  return {
    mean: byTime.map((v, i) => (i < 3 ? v : seen[i] - kept[i] * (seen[i] - v))),
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

/** A way of ageing less probable than this under one flare is not tried under another. */
const triedAgainFrom = 0.003;

/**
 * Weighs every way of ageing by how well it explains the stills.
 * @param before what was found with slightly other amounts: spares the ways that were out of the question there
 */
export function weighAgeings(
  clouds: readonly AmountCloud[],
  anchors: readonly Anchor[],
  own: OwnWays,
  before?: Ageings,
): WeighedAgeings {
  const all = Object.keys(fadingKinds) as FadingKindName[];
  const names = all.filter((name) => before === undefined || before[name].share >= triedAgainFrom);
  const sound = ownPrior(own);
  const aged = names.map((name) => ageingPrior(fadingKinds[name]));
  const fits = aged.map((prior) => fitNeutralAxis(clouds, anchors, together(prior, sound)));
  const logs = fits.map(({ logEvidence }, n) => logEvidence + Math.log(fadingKinds[names[n]].share));
  const top = Math.max(...logs);
  const raw = logs.map((v) => Math.exp(v - top));
  const total = raw.reduce((a, b) => a + b, 0);
  const found = names.map((name, n) => [name, { share: raw[n] / total, ...split(aged[n], sound, fits[n]) }]);
  const spared = Object.entries(before ?? {}).map(([name, ageing]) => [name, { ...ageing, share: 0 }]);
  return {
    ageings: Object.fromEntries([...spared, ...found]) as Ageings,
    logEvidence: top + Math.log(total),
    fit: fits[logs.indexOf(top)],
  };
}

/** What several say, each with its share: means and covariances as of one mixture. */
export function mixedAgeings(all: readonly { readonly share: number; readonly ageings: Ageings }[]): Ageings {
  const names = Object.keys(fadingKinds) as FadingKindName[];
  const mixed = names.map((name) => {
    const parts = all.map(({ share, ageings }) => ({ ...ageings[name], share: share * ageings[name].share }));
    const total = parts.reduce((sum, { share }) => sum + share, 0);
    // one that nobody believes in still has a mean
    const say = ({ share }: Ageing) => (total > 0 ? share / total : 1 / parts.length);
    const mean = parts[0].mean.map((_, i) => parts.reduce((sum, part) => sum + say(part) * part.mean[i], 0));
    const covariance = block(6, (i, j) =>
      parts.reduce(
        (sum, part) =>
          sum + say(part) * (part.covariance[i][j] + (part.mean[i] - mean[i]) * (part.mean[j] - mean[j])),
        0,
      ),
    );
    return [name, { share: total, mean, covariance }] as const;
  });
  return Object.fromEntries(mixed) as unknown as Ageings;
}

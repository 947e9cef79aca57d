import { type DyeSetName, dyeSets } from '../film/dye-sets/index.js';
import type { Triple } from '../maths/matrix3.js';
import { type AmountCloud, amountCloud, densityCloud } from './density-cloud.js';
import { type DyeSpace, dyeSpace } from './dye-space.js';
import { type Ageings, type WeighedAgeings, weighAgeings } from './losses.js';
import type { Anchor } from './neutral-axis.js';
import type { OpenGate } from './open-gate.js';
import { ownWaysOf } from './own-ways.js';
import { amountsOf, type Reading } from './reading.js';
import { block, invert } from './square-matrix.js';

/** A dye set and a flare, and what the stills say of the reel's ageing if these are its own. */
export interface Candidate extends WeighedAgeings {
  readonly dyes: DyeSetName;
  /** Stray light of the scan as a share of the open gate. */
  readonly flare: number;
  readonly space: DyeSpace;
  /** Of each still. */
  readonly clouds: readonly AmountCloud[];
  /** How probable it is beside the others; over all they add up to 1. */
  readonly share: number;
}

/**
 * Usual amounts where the frame cannot tell: of unexposed reversal film, of clear film, of a grey that somebody marks.
 * Deviation of the tone, of each dye by itself, and of the light that a scene's grey lies in: amber or blue, hardly
 * green or magenta.
 */
const usual = {
  black: { tone: 2.85, toneDeviation: 0.2, each: 0.13, light: 0 },
  film: { tone: 0, toneDeviation: 0.04, each: 0.03, light: 0 },
  neutral: { tone: 0.85, toneDeviation: 0.35, each: 0.04, light: 0.06 },
} as const;

/**
 * Flares that are tried. Without, a black of density 2.9 is read as 2.5 while a faded one is read as it is, and every
 * loss comes out too small. Usual flare of a scan and deviation of its logarithm: ours, from memory.
 */
const usualFlare = { share: 0.002, logDeviation: 0.5 } as const;
const otherFlares = [0.001, 0.004];

/** By this share a flare may miss the true one: what a dense mark tells is known no better. */
const flareMissed = 0.3;

function anchorOf(
  light: Triple,
  gate: OpenGate,
  space: DyeSpace,
  flare: number,
  kind: keyof typeof usual,
): Anchor {
  const { tone, toneDeviation, each, light: ofLight } = usual[kind];
  const [less, amounts, more] = [1 - flareMissed, 1, 1 + flareMissed].map((times) =>
    amountsOf(light, gate, space, times * flare),
  );
  const byFlare = amounts.map((_, k) => (more[k] - less[k]) / 2);
  // cyan against yellow
  const amber = [1, 0, -1];
  const covariance = block(
    3,
    (i, j) =>
      toneDeviation ** 2 +
      ofLight ** 2 * amber[i] * amber[j] +
      Number(i === j) * (each ** 2 + byFlare[i] ** 2),
  );
  return { amounts, mean: [tone, tone, tone], precision: invert(covariance).inverse };
}

const anchorsOf = ({ gate, marks }: Reading, space: DyeSpace, flare: number): Anchor[] =>
  (['black', 'film', 'neutral'] as const).flatMap((kind) =>
    marks[kind].flatMap(({ light }) =>
      light === undefined ? [] : anchorOf(light, gate, space, flare, kind),
    ),
  );

const joined = (parts: readonly Float64Array[]): Float64Array => {
  const all = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  parts.reduce((at, part) => (all.set(part, at), at + part.length), 0);
  return all;
};

/** Candidates less probable than this are passed over. */
const leastShare = 0.03;
/** Deviation that one scene adds to every number of the axis beyond what the fit itself admits. */
const sceneDeviation = 0.03;

/**
 * Weighs every dye set with every flare. None is the film's own: what several say is mixed, not the best alone believed.
 * @returns the likeliest first
 */
export function weighCandidates(reading: Reading, dyeNames: readonly DyeSetName[]): Candidate[] {
  const { light: ofStills, scenes } = reading;
  const tried = dyeNames.flatMap((dyes) => {
    const space = dyeSpace(dyeSets[dyes]);
    const under = (flare: number, before?: Ageings) => {
      const cloudOf = (light: Float64Array) =>
        amountCloud(densityCloud(light, reading.gate.level, flare), space);
      const clouds = ofStills.map(cloudOf);
      const ofScenes = scenes.map(([first, ...more]) =>
        more.length === 0 ? clouds[first] : cloudOf(joined([first, ...more].map((n) => ofStills[n]))),
      );
      const own = ownWaysOf(reading.gate, space, sceneDeviation / Math.sqrt(scenes.length));
      const found = weighAgeings(ofScenes, anchorsOf(reading, space, flare), own, before);
      const unusual = Math.log(flare / usualFlare.share) / usualFlare.logDeviation;
      return { dyes, flare, space, clouds, ...found, score: found.logEvidence - unusual ** 2 / 2 };
    };
    const first = under(usualFlare.share);
    return [first, ...otherFlares.map((flare) => under(flare, first.ageings))];
  });
  const top = Math.max(...tried.map(({ score }) => score));
  const total = tried.reduce((sum, { score }) => sum + Math.exp(score - top), 0);
  const weighed = tried.map(({ score, ...rest }) => ({ ...rest, share: Math.exp(score - top) / total }));
  const likely = weighed.filter(({ share }) => share >= leastShare);
  const kept = likely.reduce((sum, { share }) => sum + share, 0);
  return likely.map((one) => ({ ...one, share: one.share / kept })).sort((a, b) => b.share - a.share);
}

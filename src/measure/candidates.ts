import { type DyeSetName, dyeSets } from '../film/dye-sets/index.js';
import { type AmountCloud, amountCloud, densityCloud } from './density-cloud.js';
import { type DyeSpace, dyeSpace } from './dye-space.js';
import { type WeighedAgeings, weighAgeings } from './losses.js';
import type { Anchor } from './neutral-axis.js';
import { sceneDeviation } from './one-sidedness.js';
import { ownWaysOf } from './own-ways.js';
import { amountsOf, type Reading } from './reading.js';

/** A dye set and a flare, and what the stills say of the reel's ageing if these are its own. */
export interface Candidate extends WeighedAgeings {
  readonly dyes: DyeSetName;
  /** Stray light of the scan as a share of the open gate. */
  readonly flare: number;
  readonly space: DyeSpace;
  readonly clouds: readonly AmountCloud[];
}

/** Usual amounts where the frame cannot tell: of unexposed reversal film, of clear film, of a grey that somebody marks. */
const usual = {
  black: { tone: 2.8, toneDeviation: 0.18, stray: 0.12 },
  film: { tone: 0, toneDeviation: 0.04, stray: 0.03 },
  neutral: { tone: 0.85, toneDeviation: 0.35, stray: 0.12 },
} as const;

/**
 * Flares that are tried. Without, a black of density 2.9 is read as 2.5 while a faded one is read as it is, and every
 * loss comes out too small. Usual flare of a scan and deviation of its logarithm: ours, from memory.
 */
const flares = [0.001, 0.002, 0.004];
const usualFlare = { share: 0.002, logDeviation: 0.5 } as const;

function anchorsOf({ gate, marks }: Reading, space: DyeSpace, flare: number): Anchor[] {
  return (['black', 'film', 'neutral'] as const).flatMap((kind) =>
    marks[kind].flatMap(({ light }) =>
      light === undefined ? [] : { amounts: amountsOf(light, gate, space, flare), ...usual[kind] },
    ),
  );
}

/** @throws nothing: stills of which nothing can be read are refused before */
export function bestCandidate(reading: Reading, dyeNames: readonly DyeSetName[]): Candidate {
  const tried = dyeNames.flatMap((dyes) => {
    const space = dyeSpace(dyeSets[dyes]);
    return flares.map((flare): Candidate => {
      const clouds = reading.light.map((light) =>
        amountCloud(densityCloud(light, reading.gate.level, flare), space),
      );
      const own = ownWaysOf(reading.gate, space, sceneDeviation(clouds));
      return {
        dyes,
        flare,
        space,
        clouds,
        ...weighAgeings(clouds, anchorsOf(reading, space, flare), own),
      };
    });
  });
  const scoreOf = ({ logEvidence, flare }: Candidate) =>
    logEvidence - (Math.log(flare / usualFlare.share) / usualFlare.logDeviation) ** 2 / 2;
  const best = tried.reduce((a, b) => (scoreOf(b) > scoreOf(a) ? b : a));
  // now that the axis is known, a scene of one colour shows as one, and says less
  const { space, flare, clouds, fit } = best;
  const own = ownWaysOf(reading.gate, space, sceneDeviation(clouds, fit.axis));
  return { ...best, ...weighAgeings(clouds, anchorsOf(reading, space, flare), own) };
}

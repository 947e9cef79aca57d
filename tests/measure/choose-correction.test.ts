import { describe, expect, it } from 'vitest';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import type { Candidate } from '../../src/measure/candidates.js';
import { chooseCorrection } from '../../src/measure/choose-correction.js';
import { dyeSpace } from '../../src/measure/dye-space.js';
import { fadingKinds, type FadingKindName } from '../../src/measure/fading-kinds.js';
import type { Ageing, Ageings } from '../../src/measure/losses.js';
import { samplesOf } from '../../src/measure/samples.js';
import { cloudOf } from './cloud-of.js';

const deviation = 0.03;
const ageing = (share: number, mean: readonly number[]): Ageing => ({
  share,
  mean,
  covariance: mean.map((_, i) => mean.map((_, j) => (i === j ? deviation ** 2 : 0))),
});
const sound = [0, 0, 0, 0, 0, 0];
const pink = [-0.7, -0.03, -0.2, 0.01, 0.02, 0.04];

/** Everything known: in good order or cyan lost, with the rest of the ways out of the question. */
function known(goodOrder: number): Ageings {
  const names = Object.keys(fadingKinds) as FadingKindName[];
  const shares: Partial<Record<FadingKindName, number>> = { 'good-order': goodOrder, cyan: 1 - goodOrder };
  return Object.fromEntries(
    names.map((name) => [name, ageing(shares[name] ?? 0, name === 'good-order' ? sound : pink)]),
  ) as Record<FadingKindName, Ageing>;
}

const candidate = (goodOrder: number): Candidate => ({
  dyes: 'reversal-late',
  flare: 0.002,
  space: dyeSpace(dyeSets['reversal-late']),
  clouds: [cloudOf(1, [0.5, 0.97, 0.82], [0.01, 0.02, 0.04])],
  ageings: known(goodOrder),
  fit: { axis: { logFactors: [0, 0, 0], offsets: [0, 0, 0] }, leans: [0, 0], covariance: [], logEvidence: 0 },
  logEvidence: 0,
  share: 1,
});
const level = 0.85;

describe('choosing a correction', () => {
  it('carries out what is known for sure, and expects to come much closer', () => {
    const { logFactors, expected, withoutExpected } = chooseCorrection([candidate(0)], level);
    logFactors.forEach((v, k) => expect(Math.abs(v - pink[k])).toBeLessThan(deviation));
    expect(expected).toBeLessThan(0.3 * withoutExpected);
  });

  it('does nothing, exactly, where good order is likelier than not by much', () => {
    const choice = chooseCorrection([candidate(0.9)], level);
    expect([...choice.logFactors, ...choice.offsets].every((v) => v === 0)).toBe(true);
    expect(choice.expected).toBe(choice.withoutExpected);
  });

  it('never expects to do worse than nothing', () => {
    for (const share of [0, 0.2, 0.4, 0.6, 0.8, 1]) {
      const { expected, withoutExpected } = chooseCorrection([candidate(share)], level);
      expect(expected).toBeLessThanOrEqual(withoutExpected);
    }
  });
});

describe('samples of what is known', () => {
  it('have probabilities that add up to one, and the mean of what they are drawn from', () => {
    const samples = samplesOf(known(0.3));
    expect(samples.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
    const cyan = samples.filter(({ correction }) => correction.logFactors[0] < -0.4);
    const mean = cyan.reduce((sum, { correction }) => sum + correction.offsets[2] / cyan.length, 0);
    expect(mean).toBeCloseTo(pink[5], 9);
  });

  it('are the same every time, and within what a look can name', () => {
    const wild = { ...known(0), cyan: ageing(1, [-4, 0.5, 0, 0, 0, 0]) };
    expect(samplesOf(wild)).toEqual(samplesOf(wild));
    for (const { correction } of samplesOf(wild))
      correction.logFactors.forEach((v) => expect(v <= 0 && v >= Math.log(0.1)).toBe(true));
  });
});

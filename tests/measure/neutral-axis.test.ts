import { describe, expect, it } from 'vitest';
import { logLikelihood } from '../../src/measure/film-colours.js';
import { axisOf, fitNeutralAxis } from '../../src/measure/neutral-axis.js';
import { oneColouredFrom, oneSidedness } from '../../src/measure/one-sidedness.js';
import { cloudOf as cloud } from './cloud-of.js';
import type { Triple } from '../../src/maths/matrix3.js';

/** Wide for the factors, narrow for the offsets: the level of the open gate is known. */
const unknown = {
  mean: [-0.3, -0.3, -0.3, 0, 0, 0],
  covariance: [0.3, 0.3, 0.3, 0.03, 0.03, 0.03].map((deviation, i, all) =>
    all.map((_, j) => (i === j ? deviation ** 2 : 0)),
  ),
};
/** Of stills at the numbers of an axis, and of leans where there are more than six. */
const likelihood = (stills: ReturnType<typeof cloud>[], x: readonly number[], slopes = new Float64Array(8)) =>
  logLikelihood(stills, axisOf(x), x.length > 6 ? x.slice(6) : [0, 0], slopes);
const sound = { logFactors: [0, 0, 0], offsets: [0, 0, 0] } as const;
const sixOf = ({ logFactors, offsets }: typeof sound) => [...logFactors, ...offsets];

/** Three scenes of random colours pin the factors down against one another to about this. */
const factorTolerance = 0.06;
/** Contrast that all three dyes share is known from what film is usually like only: one and a half of its deviations. */
const sharedTolerance = 0.12;

describe('the neutral axis', () => {
  it.each([
    [1, 1, 1],
    [0.5, 0.97, 0.8],
    [0.95, 0.55, 0.9],
    [0.9, 0.95, 0.45],
  ] as const)('finds what is left of the dyes: %s %s %s', (...left) => {
    const stills = [1, 2, 3].map((seed) => cloud(seed, left));
    const { axis, covariance } = fitNeutralAxis(stills, [], unknown);
    const found = axis.logFactors.map(Math.exp);
    const [most, foundMost] = [Math.max(...left), Math.max(...found)];
    expect(Math.abs(foundMost - most)).toBeLessThan(sharedTolerance);
    left.forEach((v, k) => expect(Math.abs(found[k] / foundMost - v / most)).toBeLessThan(factorTolerance));
    covariance.forEach((row, i) => expect(row[i]).toBeGreaterThan(0));
  });

  it('marks pull it: with anchors the same scene is known better', () => {
    const stills = [cloud(4, [0.5, 1, 0.8])];
    const anchor = {
      amounts: [1.3, 2.6, 2.08] as Triple,
      mean: [2.6, 2.6, 2.6] as Triple,
      precision: [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 0.1 ** -2 : 0))),
    };
    const [without, withMark] = [[], [anchor]].map((marks) => fitNeutralAxis(stills, marks, unknown));
    expect(withMark.covariance[0][0]).toBeLessThan(without.covariance[0][0]);
  });

  it('takes a scene of one colour for its own lean, not for fading', () => {
    const narrow = { ...unknown, mean: sixOf(sound) };
    const { axis, leans } = fitNeutralAxis([cloud(4, [1, 1, 1], [0, 0, 0], [-0.3, 0, 0.3])], [], narrow);
    expect(leans[0]).toBeLessThan(-0.2);
    expect(Math.abs(axis.logFactors[0] - axis.logFactors[2])).toBeLessThan(factorTolerance);
  });

  it('colours brought back rightly are likelier than as seen', () => {
    const stills = [cloud(5, [0.5, 1, 0.8])];
    const right = [Math.log(0.5), 0, Math.log(0.8), 0, 0, 0];
    expect(likelihood(stills, right)).toBeGreaterThan(likelihood(stills, [0, 0, 0, 0, 0, 0]));
  });

  it('takes many stills of a reel for no more than two: they err alike', () => {
    const still = cloud(5, [0.5, 1, 0.8]);
    const times = (count: number) => {
      const x = [
        Math.log(0.6),
        -0.1,
        -0.3,
        0.02,
        0,
        0.01,
        ...Array.from({ length: count }, () => [0.1, 0]).flat(),
      ];
      return likelihood(Array<typeof still>(count).fill(still), x, new Float64Array(x.length));
    };
    expect(times(2)).toBeCloseTo(2 * times(1), 6);
    expect(times(5)).toBeCloseTo(times(2), 6);
  });

  it('has the slopes of its differences', () => {
    const stills = [cloud(9, [0.6, 0.9, 0.8])];
    const x = [-0.3, -0.1, -0.2, 0.02, -0.01, 0.03, 0.1, -0.05];
    const slopes = new Float64Array(8);
    likelihood(stills, x, slopes);
    const step = 1e-5;
    x.forEach((_, i) => {
      const at = (by: number) =>
        likelihood(
          stills,
          x.map((v, j) => (i === j ? v + by : v)),
        );
      expect(slopes[i]).toBeCloseTo((at(step) - at(-step)) / (2 * step), 2);
    });
  });
});

describe('one-sidedness', () => {
  it('is small for colours all round and the length of the lean for a cast', () => {
    expect(oneSidedness(cloud(6, [1, 1, 1]), sound)).toBeLessThan(0.05);
    expect(oneSidedness(cloud(6, [1, 1, 1], [0, 0, 0], [-0.8, 0.4, 0.4]), sound)).toBeGreaterThan(
      oneColouredFrom,
    );
  });

  it('is nothing without a middle tone', () => {
    const one = Float64Array.of(1);
    expect(oneSidedness({ amounts: Float64Array.of(3, 3, 3), weights: one, shares: one }, sound)).toBe(0);
  });
});

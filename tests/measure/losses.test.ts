import { describe, expect, it } from 'vitest';
import type { Triple } from '../../src/maths/matrix3.js';
import { fadingKinds } from '../../src/measure/fading-kinds.js';
import { weighAgeings } from '../../src/measure/losses.js';
import { cloudOf } from './cloud-of.js';

const own = {
  factorMean: 0,
  factor: [0.05, 0.05, 0.08] as Triple,
  factorShared: 0.04,
  offset: 0.03,
  offsetShared: 0.03,
  offsetMean: [0, 0, 0] as Triple,
  scene: 0.02,
};
const stills = (left: Triple, offsets: Triple = [0, 0, 0], seeds = [1, 2, 3]) =>
  seeds.map((seed) => cloudOf(seed, left, offsets));
const shareSum = (ageings: Record<string, { share: number }>) =>
  Object.values(ageings).reduce((sum, { share }) => sum + share, 0);

describe('kinds of fading', () => {
  it('have shares that add up to one', () => {
    expect(shareSum(fadingKinds)).toBeCloseTo(1, 12);
  });
});

describe('weighing ageings', () => {
  it('takes a reel whose axis is straight for one in good order', () => {
    const { ageings } = weighAgeings(stills([1, 1, 1]), [], own);
    const likeliest = Math.max(...Object.values(ageings).map(({ share }) => share));
    expect(ageings['good-order'].share).toBe(likeliest);
    ageings['good-order'].mean.forEach((v) => expect(Math.abs(v)).toBeLessThan(0.02));
  });

  /** What is left is known to this share: the film's own ways are not told from fading. */
  const leftTolerance = 0.12;
  it.each([
    ['cyan', [0.5, 0.97, 0.85], 0],
    ['magenta', [0.92, 0.55, 0.92], 1],
    ['yellow', [0.95, 0.97, 0.5], 2],
  ] as const)('names the loss of %s', (kind, left, dye) => {
    const { ageings } = weighAgeings(stills(left), [], own);
    expect(ageings[kind].share).toBeGreaterThan(0.5);
    expect(Math.abs(ageings[kind].mean[dye] - Math.log(left[dye]))).toBeLessThan(leftTolerance);
  });

  it('probabilities add up to one, deviations are positive', () => {
    const { ageings } = weighAgeings(stills([0.8, 0.9, 0.8]), [], own);
    expect(shareSum(ageings)).toBeCloseTo(1, 12);
    for (const { covariance } of Object.values(ageings))
      covariance.forEach((row, i) => expect(row[i]).toBeGreaterThan(0));
  });

  it('passes over what was out of the question before, and finds the same', () => {
    const clouds = stills([0.5, 0.97, 0.85]);
    const first = weighAgeings(clouds, [], own);
    const again = weighAgeings(clouds, [], own, first.ageings);
    expect(shareSum(again.ageings)).toBeCloseTo(1, 12);
    expect(again.ageings.magenta.share).toBe(0);
    expect(Math.abs(again.ageings.cyan.share - first.ageings.cyan.share)).toBeLessThan(0.02);
  });

  it('leans to leaving alone where film is said to stray more by itself', () => {
    const [narrow, wide] = [1, 3].map((times) => {
      const factor = own.factor.map((v) => times * v) as unknown as Triple;
      return weighAgeings(stills([0.8, 0.97, 0.88]), [], { ...own, factor }).ageings;
    });
    expect(wide['good-order'].share).toBeGreaterThan(narrow['good-order'].share);
  });

  it('takes the colour of the bare light for no stain', () => {
    const under = (light: number) => {
      const faded = stills([0.5, 0.97, 0.85], [0, 0, light]);
      return weighAgeings(faded, [], { ...own, offsetMean: [0, 0, light] }).ageings.cyan.mean;
    };
    const [plain, coloured] = [under(0), under(0.2)];
    // As the look divides by what is left of yellow, it takes out so much that the light's colour stays as it was.
    expect(coloured[2]).toBeCloseTo(plain[2], 3);
    expect(coloured[5] - plain[5]).toBeCloseTo(0.2 * (1 - Math.exp(plain[2])), 3);
  });

  it('a mark of black pins down what all three have lost', () => {
    const left = [0.5, 0.8, 0.7] as const;
    const amounts = left.map((v) => 2.9 * v) as unknown as Triple;
    const precision = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 0.1 ** -2 : 0)));
    const black = { amounts, mean: [2.9, 2.9, 2.9] as Triple, precision };
    const [without, marked] = [[], [black]].map((anchors) => weighAgeings(stills(left), anchors, own));
    const off = ({ ageings }: typeof marked) =>
      Math.abs(ageings['cyan-and-yellow'].mean[1] - Math.log(left[1]));
    expect(off(marked)).toBeLessThan(off(without));
  });
});

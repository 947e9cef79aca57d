import { describe, expect, it } from 'vitest';
import type { Triple } from '../../src/maths/matrix3.js';
import { fadingKinds } from '../../src/measure/fading-kinds.js';
import { weighLosses } from '../../src/measure/losses.js';

const own = {
  factor: 0.045,
  factorShared: 0.08,
  offset: 0.04,
  offsetShared: 0.08,
  offsetMean: [0, 0, 0] as Triple,
  scene: 0.03,
};
const fit = (left: Triple, offsets: Triple = [0, 0, 0], deviation = 0.03) => ({
  axis: { logFactors: left.map(Math.log) as unknown as Triple, offsets },
  covariance: Array.from({ length: 6 }, (_, i) =>
    Array.from({ length: 6 }, (_, j) => (i === j ? deviation ** 2 : 0)),
  ),
  score: 0,
});
const lossOf = (logLeft: Triple) => logLeft.map((v) => 1 - Math.exp(v));

describe('kinds of fading', () => {
  it('have shares that add up to one', () => {
    const total = Object.values(fadingKinds).reduce((sum, { share }) => sum + share, 0);
    expect(total).toBeCloseTo(1, 12);
  });
});

describe('weighing losses', () => {
  it('takes a reel whose axis is straight for one in good order', () => {
    const { kinds, logLeft } = weighLosses(fit([1, 1, 1]), own);
    expect(kinds['good-order']).toBeGreaterThan(0.9);
    lossOf(logLeft).forEach((loss) => expect(Math.abs(loss)).toBeLessThan(0.02));
  });

  it.each([
    ['cyan', [0.5, 0.97, 0.85], 0],
    ['magenta', [0.92, 0.55, 0.92], 1],
    ['yellow', [0.95, 0.97, 0.5], 2],
  ] as const)('names the loss of %s', (kind, left, dye) => {
    const { kinds, logLeft } = weighLosses(fit(left), own);
    expect(kinds[kind]).toBeGreaterThan(0.5);
    expect(Math.abs(lossOf(logLeft)[dye] - (1 - left[dye]))).toBeLessThan(0.06);
  });

  it('probabilities add up to one, deviations are positive', () => {
    const { kinds, logLeftDeviation, stainDeviation } = weighLosses(fit([0.8, 0.9, 0.8]), own);
    expect(Object.values(kinds).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    [...logLeftDeviation, ...stainDeviation].forEach((v) => expect(v).toBeGreaterThan(0));
  });

  it('leans to leaving alone as the evidence thins', () => {
    const [sure, thin] = [0.02, 0.3].map((deviation) =>
      weighLosses(fit([0.75, 0.95, 0.85], [0, 0, 0], deviation), own),
    );
    expect(thin.kinds['good-order']).toBeGreaterThan(sure.kinds['good-order']);
    expect(lossOf(thin.logLeft)[0]).toBeLessThan(lossOf(sure.logLeft)[0]);
  });

  it('takes the colour of the bare light for no stain', () => {
    const seen = weighLosses(fit([0.5, 0.97, 0.85], [0, 0, 0.1]), own);
    const known = weighLosses(fit([0.5, 0.97, 0.85], [0, 0, 0.1]), { ...own, offsetMean: [0, 0, 0.1] });
    expect(known.stain[2]).toBeLessThan(seen.stain[2]);
  });
});

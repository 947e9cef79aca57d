import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bleachingExample } from '../../shared/check-values/fading.js';
import { type DyeLoss, faded, unfaded } from '../../src/film/fading.js';
import {
  determinant3,
  diagonal3,
  identity3,
  invert3,
  type Matrix3,
  multiply3,
  transform3,
  type Triple,
} from '../../src/maths/matrix3.js';
import { printed } from '../tolerances.js';

const seed = 41;
const loss = fc.double({ min: 0, max: 0.9, noNaN: true });
const amount = fc.double({ min: -0.5, max: 4.5, noNaN: true });
const roundings = 1e-12;

describe('the published linear model of bleaching, with our fading', () => {
  const { absorptions, amounts, loss, densities, fadedDensities, bleach, bleachDeterminant } =
    bleachingExample;
  const a: Matrix3 = absorptions;
  const left: Triple = [faded(1, loss.cyan), faded(1, loss.magenta), faded(1, loss.yellow)];
  const b = multiply3(a, multiply3(diagonal3(left), invert3(a)));
  const each = (given: Triple, change: (amount: number, loss: number) => number): Triple => [
    change(given[0], loss.cyan),
    change(given[1], loss.magenta),
    change(given[2], loss.yellow),
  ];
  const near = (given: readonly number[], expected: readonly number[], decimals: number) =>
    given.forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(printed(decimals)));

  it('has the densities of the example, whole and faded', () => {
    near(transform3(a, amounts), densities, 7);
    near(transform3(a, each(amounts, faded)), fadedDensities, 7);
  });

  it('has the bleach matrix of the example, and it does the same', () => {
    near(b, bleach, 8);
    near([determinant3(b)], [bleachDeterminant], 7);
    near(transform3(b, densities), fadedDensities, 7);
  });

  it('gives the example back', () => {
    const found = transform3(invert3(a), fadedDensities);
    near(each(found, unfaded), amounts, 7);
    near(transform3(a, each(found, unfaded)), densities, 7);
  });

  it('is one when nothing is lost, and a share of one when all lose alike', () => {
    const even = (share: number) => {
      const kept = faded(1, share);
      return multiply3(a, multiply3(diagonal3([kept, kept, kept]), invert3(a)));
    };
    near(even(0), identity3, 12);
    near(even(0.3), diagonal3([0.7, 0.7, 0.7]), 12);
  });
});

describe('loss of dye', () => {
  it('is undone from no dye up', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 4.5, noNaN: true }),
        loss,
        (given, share) => Math.abs(unfaded(faded(given, share), share) - given) < roundings,
      ),
      { seed },
    ));

  it('of zero changes nothing, to the last bit', () =>
    fc.assert(
      fc.property(amount, (given) => unfaded(given, 0) === given && faded(given, 0) === given),
      { seed },
    ));

  it('gives back more the more was lost, and rises with what is left', () =>
    fc.assert(
      fc.property(amount, amount, loss, loss, (a, b, p, q) => {
        const [less, more] = p < q ? [p, q] : [q, p];
        if (a >= 0 && unfaded(a, more) < unfaded(a, less)) return false;
        return a === b || unfaded(a, p) < unfaded(b, p) === a < b;
      }),
      { seed },
    ));

  it('bends below no dye without a kink and lets go', () => {
    const slope = (at: number) => (unfaded(at + 1e-7, 0.6) - unfaded(at - 1e-7, 0.6)) / 2e-7;
    expect(Math.abs(slope(-1e-6) - 2.5)).toBeLessThan(1e-3);
    expect(Math.abs(slope(1e-6) - 2.5)).toBeLessThan(1e-6);
    expect(Math.abs(slope(-0.4) - 1)).toBeLessThan(1e-4);
    // All that is added far below is the gain times the reach of the bend, 0.03.
    expect(Math.abs(unfaded(-0.5, 0.6) - (-0.5 - 1.5 * 0.03))).toBeLessThan(1e-6);
  });

  it('is a share of each dye by itself', () => {
    const share: DyeLoss = { cyan: 0.3, magenta: 0.3, yellow: 0.3 };
    // ISO 18909: density 1.0 becomes 0.70 at the usual end point (from memory; here by the definition of a share).
    expect(faded(1, share.cyan)).toBeCloseTo(0.7, 12);
  });
});

import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import type { Loss } from '../../src/lut/inverse.js';
import { lossJudge, roundTrip, undo } from '../../src/lut/inverse.js';
import type { CurveTable, Lut } from '../../src/lut/lattice.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import type { Run } from '../../src/maths/matrix3.js';
import { losslessLooks, lookOf } from './inverse-looks.js';

/** The figure that the way back is held to: codes of 255, 95th percentile, 33 points. */
const withinCodes = 4;

function trip(look: Run, bits: number, size?: number) {
  const lut = sampleLattice(look, 33);
  return roundTrip(sampleLut(lut), sampleLut(undo(lut, { size })), { bits });
}

const say = (words: string) => process.stdout.write(`${words}\n`);

describe('the way back of smooth looks that lose nothing', () => {
  it.each(Object.entries(losslessLooks))('%s', (name, look) => {
    const { median, p95, most, byCause } = trip(look, 10);
    say(
      `undo, ${name}: median ${median.toFixed(2)}, 95th percentile ${p95.toFixed(2)}, most ${most.toFixed(1)} codes of 255`,
    );
    expect(p95).toBeLessThanOrEqual(withinCodes);
    expect(byCause['burnt-out'] + byCause.blocked + byCause.folded).toBeLessThan(0.001);
  });

  it('the identity comes back as the identity', () => {
    const back = undo(
      sampleLattice(() => {}, 5),
      { size: 17 },
    );
    const identity = sampleLattice(() => {}, 17);
    expect(Math.max(...back.values.map((value, i) => Math.abs(value - identity.values[i])))).toBeLessThan(
      1e-6,
    );
  });

  it('a matrix that keeps within the cube comes back as its inverse', () => {
    // r' = 0.8 r + 0.1 g + 0.05 and so on round: inverted by hand from the circulant's two rows
    const look = lookOf((r, g, b) => [
      0.05 + 0.8 * r + 0.1 * g,
      0.05 + 0.8 * g + 0.1 * b,
      0.05 + 0.8 * b + 0.1 * r,
    ]);
    const { most, lost } = trip(look, 16);
    expect(most).toBeLessThan(0.1);
    expect(lost).toBe(0);
  });

  it('more points bring it nearer', () => {
    const look = losslessLooks['projected warm'];
    expect(trip(look, 16, 33).p95).toBeLessThan(trip(look, 16, 17).p95);
  });
});

describe('what cannot come back', () => {
  const shareBy = (look: Run, cause: Loss) => trip(look, 10).byCause[cause];
  const scale = (by: number, plus: number) =>
    lookOf((r, g, b) => [by * r + plus, by * g + plus, by * b + plus]);

  it('a look that burns out the top fifth', () => {
    const { byCause, lost, regions } = trip(scale(1.25, 0), 10);
    // some channel above 0.8: 1 - 0.8^3 of the cube, less those within 4 codes of the middle of the lost fifth
    expect(byCause['burnt-out']).toBeGreaterThan(0.35);
    expect(byCause['burnt-out']).toBeLessThan(0.488);
    // the rest lies within one cell of the burnt-out codes, whose lighter colours pull the fit along: 1/33 a side
    expect(lost - byCause['burnt-out']).toBeLessThan(3 / 33);
    const greys = regions.filter(({ family }) => family === 'greys');
    expect(greys.map(({ lost: share }) => share > 0.3)).toEqual([false, false, true]);
  });

  it('a look that blocks the bottom fifth', () => {
    expect(shareBy(scale(1.25, -0.25), 'blocked')).toBeGreaterThan(0.35);
    expect(shareBy(scale(1.25, -0.25), 'burnt-out')).toBeLessThan(0.001);
  });

  it('a look that folds red over', () => {
    const folded = lookOf((r, g, b) => [3.6 * r * (1 - r), g, b]);
    expect(shareBy(folded, 'folded')).toBeGreaterThan(0.5);
  });

  it('a look that squeezes all levels into twenty codes', () => {
    expect(trip(scale(20 / 1023, 0.4), 10).byCause.squeezed).toBeGreaterThan(0.5);
    expect(trip(scale(20 / 1023, 0.4), 16).lost).toBe(0);
  });

  it('a look steeper than the points of its way back', () => {
    const look = lookOf((r, g, b) => [r ** 8, g ** 8, b ** 8]);
    expect(trip(look, 16, 9).byCause.coarse).toBeGreaterThan(0.1);
  });

  it('says colour by colour what is lost, and leaves the colours alone', () => {
    const lut = sampleLattice(scale(1.25, 0), 33);
    const colours = Float64Array.of(0.4, 0.4, 0.4, 0.97, 0.4, 0.4);
    const { errors, causes } = lossJudge(sampleLut(lut), sampleLut(undo(lut)), { bits: 8 })(colours, 2);
    expect(causes).toEqual([undefined, 'burnt-out']);
    expect(errors[0]).toBeLessThan(1);
    expect([...colours]).toEqual([0.4, 0.4, 0.4, 0.97, 0.4, 0.4]);
  });

  it('a look that gives no numbers is lost, not a crash', () => {
    const broken: Lut = { ...sampleLattice(() => {}, 2), values: new Float64Array(24).fill(NaN) };
    const back = undo(broken, { size: 5 });
    expect(back.values.every(Number.isFinite)).toBe(true);
    expect(roundTrip(sampleLut(broken), sampleLut(back), { bits: 8 }).lost).toBeGreaterThan(0.9);
  });

  it.each([1, 2.5, 257, NaN])('refuses %d points a side', (size) => {
    expect(() =>
      undo(
        sampleLattice(() => {}, 2),
        { size },
      ),
    ).toThrow(InputError);
  });
});

function curves(of: (x: number) => number, size = 1024): CurveTable {
  const values = Float64Array.from({ length: 3 * size }, (_, i) => of(Math.floor(i / 3) / (size - 1)));
  return { kind: '1d', size, domainMin: [0, 0, 0], domainMax: [1, 1, 1], values };
}

describe('the way back of a 1D LUT', () => {
  it('is the curve read backwards', () => {
    const back = undo(curves((x) => 0.1 + 0.8 * x ** 1.5));
    const run = Float64Array.from([0.2, 0.5, 0.85], (x) => 0.1 + 0.8 * x ** 1.5);
    sampleLut(back)(run, 1);
    [0.2, 0.5, 0.85].forEach((x, i) => expect(run[i]).toBeCloseTo(x, 4));
  });

  it('rises, and gives the middle of what a level may have been', () => {
    const back = undo(curves((x) => Math.min(1, 2 * x)));
    expect(back.kind).toBe('1d');
    expect(back.values[back.values.length - 1]).toBeCloseTo(0.75, 3);
    for (let i = 3; i < back.values.length; i++)
      expect(back.values[i]).toBeGreaterThanOrEqual(back.values[i - 3]);
  });
});

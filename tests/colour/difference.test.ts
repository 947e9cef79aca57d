import { describe, expect, it } from 'vitest';
import {
  bt709LabRows,
  ciede2000Pairs,
  labRows,
  labWhites,
  lightnessRows,
} from '../../shared/check-values/colour-difference.js';
import { xyOfXyz } from '../../src/colour/chromaticity.js';
import { ciede2000, ciede2000Run, labOfXyz, labRun } from '../../src/colour/difference.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { transform3, type Triple } from '../../src/maths/matrix3.js';
import { printed } from '../tolerances.js';

const expectNear = (given: readonly number[], expected: readonly number[], tolerance: number) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(tolerance));

describe('CIELAB', () => {
  it.each(labRows)('of $xyz under $white', ({ white, xyz, lab }) => {
    expectNear(labOfXyz(xyz, labWhites[white]), lab, printed(5));
  });

  it.each(lightnessRows)('lightness of Y %s', (y, lightness) => {
    expect(Math.abs(labOfXyz([0, y, 0], labWhites.d65)[0] - lightness)).toBeLessThan(printed(5));
  });

  it.each(bt709LabRows)('of BT.709 $rgb', ({ rgb, lab }) => {
    // The rows were made for primaries whose white is that of the rounded XYZ.
    const set = { ...primaries.bt709, white: xyOfXyz(labWhites.d65) };
    const [x, y, z] = transform3(rgbToXyz(set), rgb).map((value) => 100 * value);
    expectNear(labOfXyz([x, y, z], labWhites.d65), lab, printed(4));
  });

  it('does not depend on the scale of XYZ and white', () => {
    expectNear(labOfXyz([0.2, 0.3, 0.1], [0.95, 1, 1.09]), labOfXyz([20, 30, 10], [95, 100, 109]), 1e-12);
  });

  it('stays finite below black', () => {
    expect(labOfXyz([-1, -1, -1], [0.95, 1, 1.09]).every(Number.isFinite)).toBe(true);
  });

  it('is the same in runs, and a run leaves what lies beyond its count', () => {
    const xyz: Triple[] = [
      [19.01, 20, 21.78],
      [0, 0, 0],
      [57.06, 43.06, 31.96],
    ];
    const run = Float64Array.from([...xyz.flat(), 7, 8, 9]);
    labRun(run, 3, labWhites.d50);
    expect([...run]).toEqual([...xyz.flatMap((colour) => labOfXyz(colour, labWhites.d50)), 7, 8, 9]);
  });
});

describe('CIEDE2000', () => {
  it.each(ciede2000Pairs)('of %s %s %s and %s %s %s', (l1, a1, b1, l2, a2, b2, expected) => {
    const [one, two]: Triple[] = [
      [l1, a1, b1],
      [l2, a2, b2],
    ];
    expect(Math.abs(ciede2000(one, two) - expected)).toBeLessThan(printed(4));
    expect(Math.abs(ciede2000(two, one) - expected)).toBeLessThan(printed(4));
  });

  it('is 0 for equal colours and, between greys, depends on lightness alone', () => {
    expect(ciede2000([50, 12, -30], [50, 12, -30])).toBe(0);
    expect(ciede2000([0, 0, 0], [0, 0, 0])).toBe(0);
    // Between black and white the weight of lightness at L* 50 is 1.
    expect(ciede2000([0, 0, 0], [100, 0, 0])).toBeCloseTo(100, 12);
  });

  it('stays finite for colours far outside the space', () => {
    expect(Number.isFinite(ciede2000([1e4, 1e60, -1e60], [-1e4, -1e60, 1e55]))).toBe(true);
    expect(ciede2000([NaN, 0, 0], [50, 0, 0])).toBeNaN();
  });

  it('is the same in runs', () => {
    const one = Float64Array.from(ciede2000Pairs.flatMap((pair) => pair.slice(0, 3)));
    const two = Float64Array.from(ciede2000Pairs.flatMap((pair) => pair.slice(3, 6)));
    const out = new Float64Array(ciede2000Pairs.length + 1).fill(-1);
    ciede2000Run(one, two, ciede2000Pairs.length, out);
    ciede2000Pairs.forEach((pair, i) => expect(Math.abs(out[i] - pair[6])).toBeLessThan(printed(4)));
    expect(out[ciede2000Pairs.length]).toBe(-1);
  });
});

import { describe, expect, it } from 'vitest';
import { rgbToXyzChecks } from '../../shared/check-values/primaries.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb, rgbToXyz, whiteOf } from '../../src/colour/primaries/rgb-matrix.js';
import { xyOfXyz } from '../../src/colour/chromaticity.js';
import { identity3, invert3, multiply3, transform3 } from '../../src/maths/matrix3.js';
import { inverse, printed } from '../tolerances.js';

const expectNear = (given: readonly number[], expected: readonly number[], tolerance: number) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i]), `element ${i}`).toBeLessThan(tolerance));

describe.each(Object.entries(primaries))('%s', (name, set) => {
  const matrix = rgbToXyz(set);

  it('has a title and a source', () => {
    expect(set.title).not.toBe('');
    expect(set.source).not.toBe('');
  });

  it('has a published matrix and meets it', () => {
    const check = rgbToXyzChecks[name];
    expect(check).toBeDefined();
    expectNear(matrix, check.matrix, printed(check.decimals));
  });

  it('sends 1 1 1 to its white with Y = 1, and each primary to its chromaticity', () => {
    expectNear(transform3(matrix, [1, 1, 1]), whiteOf(set), inverse);
    expect(whiteOf(set)[1]).toBe(1);
    expectNear(xyOfXyz(transform3(matrix, [1, 0, 0])), set.red, inverse);
    expectNear(xyOfXyz(transform3(matrix, [0, 1, 0])), set.green, inverse);
    expectNear(xyOfXyz(transform3(matrix, [0, 0, 1])), set.blue, inverse);
  });

  it('times its inverse is one', () => {
    expectNear(multiply3(matrix, invert3(matrix)), identity3, inverse);
  });

  it.each(Object.entries(primaries))('goes to %s and back, white to white', (_, other) => {
    expectNear(transform3(rgbToRgb(set, other), [1, 1, 1]), [1, 1, 1], inverse);
    expectNear(multiply3(rgbToRgb(other, set), rgbToRgb(set, other)), identity3, inverse);
  });
});

it('no published matrix lies about for primaries that are not there', () => {
  expect(Object.keys(rgbToXyzChecks).sort()).toEqual(Object.keys(primaries).sort());
});

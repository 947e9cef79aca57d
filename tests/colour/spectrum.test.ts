import { describe, expect, it } from 'vitest';
import { cie1931 } from '../../shared/tables/cie-1931-observer.js';
import {
  fromFunction,
  grid,
  resamplePairsToGrid,
  resampleToGrid,
  wavelengthNm,
} from '../../src/colour/spectrum.js';

describe('the grid', () => {
  it('runs from 380 to 780 nm', () => {
    expect(wavelengthNm(0)).toBe(380);
    expect(wavelengthNm(grid.count - 1)).toBe(780);
  });
});

describe('resampling', () => {
  it('leaves a table on the grid as it is', () => {
    expect([...resampleToGrid(380, 5, cie1931.ybar)]).toEqual([...cie1931.ybar]);
  });

  it('is exact for straight lines, from finer, coarser and shifted tables', () => {
    const line = (nm: number) => 3 * nm - 700;
    const expected = fromFunction(line);
    for (const [start, step] of [
      [300, 10],
      [377, 1],
      [373, 7],
    ]) {
      const values = Array.from({ length: Math.ceil((790 - start) / step) + 1 }, (_, i) =>
        line(start + step * i),
      );
      resampleToGrid(start, step, values).forEach((value, i) => expect(value).toBeCloseTo(expected[i], 9));
    }
  });

  it('holds the first and last value beyond the table', () => {
    const spectrum = resamplePairsToGrid([
      [400, 2],
      [500, 6],
    ]);
    expect(spectrum[0]).toBe(2);
    expect(spectrum[4]).toBe(2);
    expect(spectrum[14]).toBe(4);
    expect(spectrum[80]).toBe(6);
    expect([...resamplePairsToGrid([[600, 7]])]).toEqual(Array(grid.count).fill(7));
  });

  it('refuses an empty table and wavelengths that do not rise', () => {
    expect(() => resampleToGrid(380, 5, [])).toThrow(RangeError);
    expect(() =>
      resamplePairsToGrid([
        [500, 1],
        [500, 2],
      ]),
    ).toThrow(RangeError);
    expect(() =>
      resamplePairsToGrid([
        [500, 1],
        [NaN, 2],
      ]),
    ).toThrow(RangeError);
  });
});

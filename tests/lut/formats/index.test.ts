import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/errors/input-error.js';
import { lutFormatOf, lutFormats } from '../../../src/lut/formats/index.js';

describe('the format of a LUT file', () => {
  it.each(['attic.cube', 'ATTIC.CUBE', '/a.b/c d.Cube'])('is told by the end of its name: %s', (file) => {
    expect(lutFormatOf(file)).toBe(lutFormats.cube);
  });

  it.each(['attic.clf', 'ATTIC.CLF'])('%s is a Common LUT Format file', (file) => {
    expect(lutFormatOf(file)).toBe(lutFormats.commonLutFormat);
  });

  it.each(['attic', 'attic.cub', 'attic.cube.txt', 'cube', ''])('is unknown for %j', (file) => {
    expect(() => lutFormatOf(file)).toThrow(InputError);
  });
});

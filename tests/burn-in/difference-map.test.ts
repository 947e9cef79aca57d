import { describe, expect, it } from 'vitest';
import { differenceMap } from '../../src/burn-in/difference-map.js';
import { ciede2000 } from '../../src/colour/difference.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { makePicture } from '../../src/picture/picture.js';

const seenAs = { curve: transferFunctions.srgb, primaries: primaries.bt709 };
const flat = (code: number, bits: 8 | 16 = 8) => {
  const picture = makePicture(100, 60, { channels: 3, bits });
  picture.data.fill(code);
  return picture;
};

/** L* of a grey of sRGB (CIE 15:2004; IEC 61966-2-1). */
function lightness(code: number): number {
  const signal = code / 255;
  const y = signal <= 0.04045 ? signal / 12.92 : ((signal + 0.055) / 1.055) ** 2.4;
  return 116 * Math.cbrt(y) - 16;
}

describe('difference map', () => {
  it('is nothing between two stills that are alike, of two depths too', () => {
    const { values } = differenceMap(flat(90), flat(90 * 257, 16), { dx: 0.3, dy: -1 }, seenAs);
    for (const value of values) expect(value).toBeCloseTo(0, 9);
  });

  it('is the difference of the two colours where they differ, and only there', () => {
    const burnt = flat(90);
    for (let y = 0; y < 60; y++) burnt.data.fill(110, 3 * (100 * y + 60), 3 * (100 * y + 100));
    const { values, cell, left, across } = differenceMap(flat(90), burnt, { dx: 0, dy: 0 }, seenAs);
    const expected = ciede2000([lightness(90), 0, 0], [lightness(110), 0, 0]);
    values.forEach((value, i) => {
      const x = left + cell * (i % across);
      if (x + cell <= 60) expect(value).toBeCloseTo(0, 9);
      // primaries and white of rounded chromaticities leave greys a trace of colour
      if (x >= 60) expect(value).toBeCloseTo(expected, 2);
    });
  });
});

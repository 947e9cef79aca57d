import { describe, expect, it } from 'vitest';
import {
  fromRgbFactors,
  type LumaChromaCoding,
  type MatrixName,
  matrices,
  toRgbFactors,
} from '../../src/colour/luma-chroma.js';

const names = Object.keys(matrices) as MatrixName[];
const ranges = ['full', 'legal'] as const;

function planesOf([r, g, b]: readonly number[], coding: LumaChromaCoding): number[] {
  const { luma, cb, cr, lumaZero, chromaZero } = fromRgbFactors(coding);
  const dot = (factors: readonly number[]) => factors[0] * r + factors[1] * g + factors[2] * b;
  return [dot(luma) + lumaZero, dot(cb) + chromaZero, dot(cr) + chromaZero];
}

/** 100 % bars of BT.601 in 8 bits: ITU-R BT.801-1, table 1 (codes typed from memory). */
const bars601 = [
  { rgb: [1, 1, 1], codes: [235, 128, 128] },
  { rgb: [1, 1, 0], codes: [210, 16, 146] },
  { rgb: [0, 1, 1], codes: [170, 166, 16] },
  { rgb: [0, 1, 0], codes: [145, 54, 34] },
  { rgb: [1, 0, 1], codes: [106, 202, 222] },
  { rgb: [1, 0, 0], codes: [81, 90, 240] },
  { rgb: [0, 0, 1], codes: [41, 240, 110] },
  { rgb: [0, 0, 0], codes: [16, 128, 128] },
];

describe('luma and colour differences', () => {
  it.each(bars601)('codes of a published bar: $codes', ({ rgb, codes }) => {
    const coding = { matrix: 'bt601', bits: 8, range: 'legal', rgbRange: 'full' } as const;
    expect(
      planesOf(
        rgb.map((level) => 65535 * level),
        coding,
      ).map(Math.round),
    ).toEqual(codes);
  });

  it.each(names)(
    '%s: greys have no colour difference, black and white lie where the range says',
    (matrix) => {
      for (const [range, black, white] of [
        ['legal', 64, 940],
        ['full', 0, 1023],
      ] as const) {
        const coding = { matrix, bits: 10, range, rgbRange: 'full' } as const;
        expect(planesOf([0, 0, 0], coding)).toEqual([black, 512, 512]);
        planesOf([65535, 65535, 65535], coding).forEach((code, i) =>
          expect(code).toBeCloseTo([white, 512, 512][i], 9),
        );
      }
    },
  );

  it.each(names)('%s: there and back, in all ranges', (matrix) => {
    for (const range of ranges)
      for (const rgbRange of ranges) {
        const coding = { matrix, bits: 12, range, rgbRange };
        const rgb = [12345, 60000, 33];
        const [y, cb, cr] = planesOf(rgb, coding);
        const f = toRgbFactors(coding);
        expect(f.luma * y + f.redFromCr * cr + f.redZero).toBeCloseTo(rgb[0], 6);
        expect(f.luma * y + f.greenFromCb * cb + f.greenFromCr * cr + f.greenZero).toBeCloseTo(rgb[1], 6);
        expect(f.luma * y + f.blueFromCb * cb + f.blueZero).toBeCloseTo(rgb[2], 6);
      }
  });
});

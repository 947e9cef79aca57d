import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { makePicture } from '../../src/picture/picture.js';
import type { Picture } from '../../src/picture/picture.js';
import { areaCoverage, fitWithin, resample } from '../../src/picture/resample.js';

function noise(
  width: number,
  height: number,
  channels: Picture['channels'],
  bits: Picture['bits'] = 8,
): Picture {
  const random = seededRandom(width * 100 + height);
  const picture = makePicture(width, height, { channels, bits });
  for (let i = 0; i < picture.data.length; i++) picture.data[i] = Math.floor(random() * 2 ** bits);
  return picture;
}

/**
 * A slow plain version: every pixel repeated so often that source and target share a grid, then the plain mean of each
 * target pixel's block; colours weighted by alpha.
 */
function slowResample(source: Picture, width: number, height: number): number[] {
  const { channels, data } = source;
  const alpha = channels === 2 || channels === 4;
  const out: number[] = [];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const sums = Array<number>(channels).fill(0);
      for (let v = y * source.height; v < (y + 1) * source.height; v++)
        for (let u = x * source.width; u < (x + 1) * source.width; u++) {
          const at = (Math.floor(v / height) * source.width + Math.floor(u / width)) * channels;
          const weight = alpha ? data[at + channels - 1] : 1;
          for (let c = 0; c < channels; c++)
            sums[c] += data[at + c] * (alpha && c === channels - 1 ? 1 : weight);
        }
      const count = source.width * source.height;
      const total = alpha ? sums[channels - 1] : count;
      sums.forEach((sum, c) => {
        const colour = !alpha || c < channels - 1;
        out.push(colour ? (total === 0 ? 0 : sum / total) : sum / count);
      });
    }
  return out;
}

describe('resample', () => {
  it.each([
    [7, 5, 3, 2, 3, 8],
    [8, 6, 4, 3, 1, 8],
    [5, 4, 7, 9, 3, 8],
    [9, 2, 4, 5, 2, 16],
    [6, 7, 5, 1, 4, 16],
    [1, 1, 3, 2, 4, 8],
    [13, 1, 1, 1, 3, 16],
  ] as const)('%i x %i to %i x %i agrees with a slow plain version', (w, h, toW, toH, channels, bits) => {
    const source = noise(w, h, channels, bits);
    const { data } = resample(source, toW, toH);
    // Half a code of rounding, and the sums' last digits beside it.
    const rounding = 0.5 + 1e-6;
    const farthest = slowResample(source, toW, toH).map((value, i) => Math.abs(value - data[i]));
    expect(Math.max(...farthest)).toBeLessThanOrEqual(rounding);
  });

  it('keeps even pictures even at both ends of the codes', () => {
    for (const code of [0, 1, 65534, 65535]) {
      const even = makePicture(7, 3, { channels: 3, bits: 16 }, new Uint16Array(63).fill(code));
      expect(new Set(resample(even, 5, 2).data)).toEqual(new Set([code]));
    }
  });

  it('does not let unseen colours in: red with no alpha beside blue', () => {
    const pair = makePicture(2, 1, { channels: 4, bits: 8 }, Uint8Array.from([255, 0, 0, 0, 0, 0, 255, 255]));
    expect([...resample(pair, 1, 1).data]).toEqual([0, 0, 255, 128]);
  });

  it('repeats pixels when enlarging by whole factors', () => {
    const pair = makePicture(2, 1, { channels: 1, bits: 8 }, Uint8Array.from([3, 9]));
    expect([...resample(pair, 4, 2).data]).toEqual([3, 3, 9, 9, 3, 3, 9, 9]);
  });

  it('returns a picture that has the size already', () => {
    const picture = noise(3, 2, 3);
    expect(resample(picture, 3, 2)).toBe(picture);
  });

  it('refuses sizes that are none', () => {
    for (const [w, h] of [
      [0, 1],
      [1, 0],
      [NaN, 1],
      [1, Infinity],
    ])
      expect(() => resample(noise(2, 2, 1), w, h)).toThrow(RangeError);
  });
});

describe('areaCoverage', () => {
  it('shares out each target cell wholly and stays inside the source', () => {
    for (let source = 1; source < 40; source++)
      for (let target = 1; target < 40; target++) {
        const { first, shares } = areaCoverage(source, target);
        shares.forEach((list, i) => {
          expect(list.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
          expect(first[i] + list.length).toBeLessThanOrEqual(source);
        });
      }
  });
});

describe('fitWithin', () => {
  const box = { width: 740, height: 620 };

  it.each([
    [4000, 3000, 740, 555],
    [740, 620, 740, 620],
    [320, 240, 640, 480],
    [500, 500, 500, 500],
    [1, 1, 620, 620],
    [6000, 4, 740, 1],
    [1, 5000, 1, 620],
  ])('%i x %i becomes %i x %i', (width, height, toWidth, toHeight) => {
    expect(fitWithin({ width, height }, box)).toEqual({ width: toWidth, height: toHeight });
  });
});

import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { makePicture } from '../../src/picture/picture.js';
import type { Picture } from '../../src/picture/picture.js';
import { drawBeforeAfter } from '../../src/preview/before-after.js';
import { palette } from '../../src/preview/palette.js';
import { fonts } from './fonts.js';

/** Even pictures of one colour. */
function even(width: number, height: number, ...codes: number[]): Picture {
  const channels = codes.length as Picture['channels'];
  const data = Uint8Array.from({ length: width * height * channels }, (_, i) => codes[i % channels]);
  return makePicture(width, height, { channels, bits: 8 }, data);
}
const draw = (before: Picture, after: Picture, names = ['as recorded', 'Regatta']) =>
  drawBeforeAfter({ name: names[0], display: before }, { name: names[1], display: after }, fonts);

/** The colour of the page at x, y. */
const at = ({ width, data }: Picture, x: number, y: number) => [
  ...data.subarray(3 * (y * width + x), 3 * (y * width + x) + 3),
];

/** How many pixels of the page have exactly this colour. */
const count = ({ data }: Picture, ink: readonly number[]) => {
  let sum = 0;
  for (let i = 0; i < data.length; i += 3)
    if (data[i] === ink[0] && data[i + 1] === ink[1] && data[i + 2] === ink[2]) sum++;
  return sum;
};

describe('drawBeforeAfter', () => {
  it('shows before on the left and after on the right, untouched in colour', () => {
    const { picture } = draw(even(640, 480, 90, 60, 30), even(640, 480, 120, 100, 80));
    expect(picture).toMatchObject({ width: 1600, channels: 3, bits: 8 });
    expect(at(picture, 300, 300)).toEqual([90, 60, 30]);
    expect(at(picture, 1100, 300)).toEqual([120, 100, 80]);
    expect(at(picture, 5, 5)).toEqual([...palette.surround]);
    expect(count(picture, [90, 60, 30])).toBe(640 * 480);
    expect(count(picture, [120, 100, 80])).toBe(640 * 480);
  });

  it('says and marks what is newly lost, and nothing else', () => {
    const before = even(200, 100, 100, 100, 100);
    const after = even(200, 100, 100, 100, 100);
    after.data.fill(255, 0, 3 * 200 * 30);
    after.data.fill(0, 3 * 200 * 90);
    const { picture, shares, caption } = draw(before, after);
    expect(shares).toEqual({ burntOutPercent: 30, blockedPercent: 10 });
    expect(caption).toBe('30 % newly burnt out, 10 % newly blocked');
    const none = draw(after, after);
    expect(none.caption).toBe('none newly burnt out, none newly blocked');
    expect(count(picture, palette.burntOut)).toBeGreaterThan(count(none.picture, palette.burntOut) + 1000);
    expect(count(picture, palette.blocked)).toBeGreaterThan(count(none.picture, palette.blocked) + 500);
  });

  it('takes marks and scopes from the codes, where they are given', () => {
    const shown = even(40, 30, 128, 128, 128);
    const codes = makePicture(80, 60, { channels: 1, bits: 16 }, new Uint16Array(4800).fill(30000));
    const burnt = makePicture(80, 60, { channels: 1, bits: 16 }, new Uint16Array(4800).fill(65535));
    const { shares } = drawBeforeAfter(
      { name: 'a', display: shown, codes },
      { name: 'b', display: shown, codes: burnt },
      fonts,
    );
    expect(shares).toEqual({ burntOutPercent: 100, blockedPercent: 0 });
  });

  it('shows transparent pictures over the surround, grey and deep ones as they look', () => {
    const clear = draw(even(400, 300, 9, 9, 9, 0), even(400, 300, 77)).picture;
    expect(at(clear, 200, 200)).toEqual([...palette.surround]);
    expect(at(clear, 1000, 200)).toEqual([77, 77, 77]);
    const deep = makePicture(400, 300, { channels: 3, bits: 16 }, new Uint16Array(360000).fill(77 * 257));
    expect(at(draw(deep, deep).picture, 200, 200)).toEqual([77, 77, 77]);
  });

  it.each([
    [1, 1],
    [3000, 1],
    [1, 3000],
    [8000, 20],
    [739, 619],
    [2, 7],
  ])('sets stills of %i x %i', (width, height) => {
    const random = seededRandom(width + height);
    const noise = makePicture(width, height, { channels: 3, bits: 8 });
    noise.data.forEach((_, i) => (noise.data[i] = Math.floor(256 * random())));
    const { picture } = draw(noise, noise);
    expect(picture.width).toBe(1600);
    expect(picture.height).toBeGreaterThan(500);
    expect(picture.height).toBeLessThan(1400);
  });

  it('shows displays of two sizes side by side, the scopes under the taller', () => {
    const codes = even(8, 8, 50, 50, 50);
    const side = (height: number) => ({ name: 'a', display: even(740, height, 1, 2, 3), codes });
    const heightOf = (left: number, right: number) =>
      drawBeforeAfter(side(left), side(right), fonts).picture.height;
    expect(heightOf(100, 300)).toBe(heightOf(300, 300));
    expect(heightOf(300, 100)).toBe(heightOf(100, 100) + 200);
  });

  it('refuses codes of two sizes, which no pixel-by-pixel comparison fits', () => {
    expect(() => draw(even(4, 3, 9, 9, 9), even(3, 4, 9, 9, 9))).toThrow(RangeError);
  });

  it('takes any name', () => {
    const names = ['', 'x'.repeat(5000)];
    const strange = ['\u0000\n\t', '漢字 \u{1F600} Ωμέγα'];
    for (const pair of [names, strange])
      expect(draw(even(4, 3, 9, 9, 9), even(4, 3, 9, 9, 9), pair).picture.width).toBe(1600);
  });

  it('draws the same bytes for the same input', () => {
    const [before, after] = [even(30, 20, 1, 2, 3), even(30, 20, 255, 2, 3)];
    const [first, second] = [draw(before, after), draw(before, after)];
    expect(Buffer.compare(Buffer.from(first.picture.data), Buffer.from(second.picture.data))).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import { drawHistogram } from '../../src/picture/histogram.js';
import { countLevels, levelsOf } from '../../src/picture/level-counts.js';
import { changeDepth, makePicture } from '../../src/picture/picture.js';
import { pixelsOf, style } from './scopes.js';

const grey = (...codes: number[]) =>
  makePicture(codes.length, 1, { channels: 1, bits: 8 }, Uint8Array.from(codes));

describe('countLevels', () => {
  it('counts every pixel once', () => {
    const { counts, pixels } = countLevels(grey(0, 0, 7, 255), 0);
    expect([counts[0], counts[7], counts[255], counts.reduce((a, b) => a + b, 0), pixels]).toEqual([
      2, 1, 1, 4, 4,
    ]);
  });

  it('counts within columns, and by channel', () => {
    const picture = makePicture(
      2,
      2,
      { channels: 3, bits: 8 },
      Uint8Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
    );
    const { counts, pixels } = countLevels(picture, 2, 1, 2);
    expect([counts[6], counts[12], pixels]).toEqual([1, 1, 2]);
  });

  it('leaves out transparent pixels only', () => {
    const picture = makePicture(
      3,
      1,
      { channels: 2, bits: 16 },
      Uint16Array.from([640, 0, 640, 1, 64, 65535]),
    );
    const { counts, pixels } = countLevels(picture, 0);
    expect([counts[10], counts[1], pixels]).toEqual([1, 1, 2]);
  });

  it('tells apart 256 levels at 8 bits, 1024 at 16', () => {
    expect(levelsOf({ bits: 8 })).toBe(256);
    expect(countLevels(changeDepth(grey(255), 16), 0).counts[1023]).toBe(1);
  });
});

describe('drawHistogram', () => {
  const size = { ...style, width: 256, height: 40 };
  const filledColumns = (plot: ReturnType<typeof drawHistogram>) =>
    [
      ...new Set(
        pixelsOf(plot)
          .filter((p) => p[2] === 200)
          .map(([x]) => x),
      ),
    ].sort((a, b) => a - b);

  it('fills the columns of the codes that occur, and no others', () => {
    expect(filledColumns(drawHistogram(grey(0, 3, 3, 200, 255), size))).toEqual([0, 3, 200, 255]);
  });

  it('is level for a ramp that has every code once', () => {
    const ramp = grey(...Array.from({ length: 256 }, (_, i) => i));
    expect(pixelsOf(drawHistogram(ramp, size)).every((p) => p[2] === 200)).toBe(true);
  });

  it('goes by the square root: a quarter of the pixels, half the height', () => {
    const plot = drawHistogram(grey(10, 10, 10, 10, 90), size);
    const heightAt = (column: number) => pixelsOf(plot).filter((p) => p[0] === column && p[2] === 200).length;
    expect([heightAt(10), heightAt(90)]).toEqual([40, 20]);
  });

  it('is not pressed flat by burnt out pixels', () => {
    const plot = drawHistogram(grey(...Array<number>(1000).fill(255), 100), size);
    expect(pixelsOf(plot).filter((p) => p[0] === 100 && p[2] === 200)).toHaveLength(40);
  });

  it('shows red, green and blue as rows from the top', () => {
    const picture = makePicture(1, 1, { channels: 3, bits: 8 }, Uint8Array.from([20, 120, 220]));
    const plot = drawHistogram(picture, { ...size, height: 68 });
    const lit = pixelsOf(plot).filter(([, , r, g, b]) => Math.max(r, g, b) === 255);
    expect(new Set(lit.map(([x, y]) => `${x} ${Math.floor(y / 24)}`))).toEqual(
      new Set(['20 0', '120 1', '220 2']),
    );
  });

  it('lays the picture before over it as a line', () => {
    const plot = drawHistogram(grey(10), size, grey(50));
    const line = pixelsOf(plot).filter((p) => p[2] === 255);
    expect(new Set(line.map(([x]) => x))).toEqual(new Set([50, 51]));
  });

  it('draws an empty bed where nothing is to be counted, and any size', () => {
    const unseen = makePicture(1, 1, { channels: 2, bits: 8 }, Uint8Array.from([9, 0]));
    expect(filledColumns(drawHistogram(unseen, size))).toEqual([]);
    for (const [width, height] of [
      [1, 1],
      [2, 2],
      [3, 47],
    ])
      expect(drawHistogram(grey(9), { ...style, width, height })).toMatchObject({ width, height });
  });
});

import { describe, expect, it } from 'vitest';
import { makeCanvas } from '../../src/picture/canvas.js';
import type { Ink } from '../../src/picture/canvas.js';
import { makePicture } from '../../src/picture/picture.js';
import type { Picture } from '../../src/picture/picture.js';
import { drawMarks, findClipping, hatchings, marksInWords } from '../../src/preview/clipping-marks.js';

const picture = (channels: Picture['channels'], ...codes: number[]) =>
  makePicture(codes.length / channels, 1, { channels, bits: 8 }, Uint8Array.from(codes));
const deep = (channels: Picture['channels'], ...codes: number[]) =>
  makePicture(codes.length / channels, 1, { channels, bits: 16 }, Uint16Array.from(codes));

/** What is found for one pixel: burnt out, blocked, nothing. */
function verdict(before: Picture, after: Picture): string {
  const { burntOut, blocked } = findClipping(before, after);
  return burntOut.data[0] > 0 ? 'burnt out' : blocked.data[0] > 0 ? 'blocked' : 'nothing';
}

describe('findClipping', () => {
  it.each([
    ['drawn white', [250, 250, 250], [255, 255, 255], 'burnt out'],
    ['one channel is enough', [200, 100, 100], [255, 120, 90], 'burnt out'],
    ['just short of white', [200, 100, 100], [254, 254, 254], 'nothing'],
    ['white before as well', [255, 255, 255], [255, 255, 255], 'nothing'],
    ['a channel more than before', [255, 200, 200], [255, 255, 200], 'burnt out'],
    ['other channels than before, fewer', [255, 255, 200], [255, 254, 200], 'nothing'],
    ['all at black', [3, 2, 1], [0, 0, 0], 'blocked'],
    ['a pure colour is not blocked', [30, 20, 10], [30, 0, 0], 'nothing'],
    ['black before as well', [0, 0, 0], [0, 0, 0], 'nothing'],
    ['the last channel goes to black', [9, 0, 0], [0, 0, 0], 'blocked'],
    ['opened instead', [0, 0, 0], [5, 5, 5], 'nothing'],
  ])('%s', (_, before, after, expected) => {
    expect(verdict(picture(3, ...before), picture(3, ...after))).toBe(expected);
  });

  it('takes the first and last ten-bit step as the ends of 16 bits', () => {
    const grey = deep(3, 30000, 30000, 30000);
    expect(verdict(grey, deep(3, 65472, 0, 0))).toBe('burnt out');
    expect(verdict(grey, deep(3, 65471, 0, 0))).toBe('nothing');
    expect(verdict(grey, deep(3, 63, 63, 63))).toBe('blocked');
    expect(verdict(grey, deep(3, 64, 63, 63))).toBe('nothing');
  });

  it('compares across depths and channels', () => {
    expect(verdict(picture(1, 255), deep(3, 65535, 65535, 65535))).toBe('nothing');
    expect(verdict(picture(1, 250), deep(3, 65535, 50000, 50000))).toBe('burnt out');
    expect(verdict(deep(2, 900, 65535), picture(1, 0))).toBe('blocked');
  });

  it('uses the limits of a legal range', () => {
    const limits = { after: { black: 16, white: 235 } };
    const { shares } = findClipping(picture(1, 100, 100, 100, 100), picture(1, 16, 17, 234, 235), limits);
    expect(shares).toEqual({ burntOutPercent: 25, blockedPercent: 25 });
  });

  it('counts shares of the pixels that are there', () => {
    const before = picture(4, ...[9, 9, 9, 255], ...[9, 9, 9, 255], ...[9, 9, 9, 255], ...[9, 9, 9, 255]);
    const after = picture(4, ...[255, 9, 9, 0], ...[255, 9, 9, 1], ...[9, 9, 9, 255], ...[0, 0, 0, 0]);
    expect(findClipping(before, after).shares).toEqual({ burntOutPercent: 50, blockedPercent: 0 });
    const unseen = picture(2, 5, 0);
    expect(findClipping(unseen, unseen).shares).toEqual({ burntOutPercent: 0, blockedPercent: 0 });
  });

  it('refuses pictures of two sizes', () => {
    expect(() => findClipping(picture(1, 1, 2), picture(1, 1))).toThrow(RangeError);
  });
});

describe('drawMarks', () => {
  const ink: Ink = [200, 0, 0];
  /** Marks of a mask given as rows of text, drawn at its own size; '#' is full ink, '+' some. */
  function drawn(rows: string[], hatching = hatchings.burntOut, scale = 1): string[] {
    const [width, height] = [rows[0].length, rows.length];
    const mask = makePicture(width, height, { channels: 1, bits: 8 });
    rows
      .join('')
      .split('')
      .forEach((cell, i) => (mask.data[i] = cell === '#' ? 255 : 0));
    const canvas = makeCanvas(width * scale + 2, height * scale + 2, [0, 0, 0]);
    drawMarks(canvas, { x: 1, y: 1, width: width * scale, height: height * scale }, mask, hatching, ink);
    return Array.from({ length: canvas.height }, (_, y) =>
      Array.from({ length: canvas.width }, (_unused, x) => {
        const value = canvas.data[3 * (y * canvas.width + x)];
        return value === 200 ? '#' : value > 0 ? '+' : '.';
      }).join(''),
    );
  }
  const inkShare = (rows: string[]) => rows.join('').replace(/[^#]/g, '').length / rows.join('').length;

  it('draws nothing where nothing is lost', () => {
    expect(inkShare(drawn(Array<string>(20).fill('.'.repeat(20))))).toBe(0);
  });

  it('hatches a lost picture and leaves its border free of a line', () => {
    const rows = drawn(Array<string>(40).fill('#'.repeat(40)));
    expect(inkShare(rows)).toBeGreaterThan(0.15);
    expect(inkShare(rows)).toBeLessThan(0.35); // the picture stays in sight
    expect(rows[0]).not.toContain('#'); // nothing beyond the box
  });

  it('draws a line around a lost place', () => {
    const rows = Array.from(
      { length: 30 },
      (_, y) => '.'.repeat(10) + (y > 9 && y < 20 ? '#' : '.').repeat(10) + '.'.repeat(10),
    );
    const out = drawn(rows);
    // From far left to the middle, the first mark met is the line, and it is met in every row of the place.
    for (let y = 12; y < 18; y++) expect(out[y + 1].slice(8, 13)).toContain('#');
  });

  it('dots single lost pixels in', () => {
    const rows = Array<string>(15).fill('.'.repeat(15));
    rows[7] = '.......#.......';
    const out = drawn(rows);
    expect(out[8][8]).toBe('+');
    expect(out.join('').replace(/\./g, '')).toBe('+');
  });

  it('tells its two kinds apart by form: lines that join, dots that do not', () => {
    const cells = (hatching: (x: number, y: number) => boolean) =>
      Array.from({ length: 24 }, (_, y) => Array.from({ length: 24 }, (_u, x) => hatching(x, y)));
    const lines = cells(hatchings.burntOut);
    const dots = cells(hatchings.blocked);
    // Every row is crossed by a slanted line; whole rows are free of dots.
    expect(lines.every((row) => row.includes(true))).toBe(true);
    expect(dots.filter((row) => !row.includes(true)).length).toBe(16);
  });

  it('brings a mask of another size to the box', () => {
    const rows = Array<string>(10).fill('#'.repeat(10));
    expect(inkShare(drawn(rows, hatchings.blocked, 4))).toBeGreaterThan(0.05);
  });
});

describe('marksInWords', () => {
  it.each([
    [0, 'none'],
    [1e-9, 'less than 0.1 %'],
    [0.0999, 'less than 0.1 %'],
    [0.1, '0.1 %'],
    [0.34, '0.3 %'],
    [9.94, '9.9 %'],
    [9.96, '10 %'],
    [100, '100 %'],
  ])('%d per cent: %s', (percent, words) => {
    expect(marksInWords({ burntOutPercent: percent, blockedPercent: 0 })).toEqual([
      `${words} newly burnt out`,
      'none newly blocked',
    ]);
  });
});

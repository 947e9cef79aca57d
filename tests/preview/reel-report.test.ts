import { describe, expect, it } from 'vitest';
import { makePicture, type Picture } from '../../src/picture/picture.js';
import type { Triple } from '../../src/maths/matrix3.js';
import { palette } from '../../src/preview/palette.js';
import { drawReelReport, type ReelReport } from '../../src/preview/reel-report.js';
import { cloudPlot, cloudScale, strays } from '../../src/preview/reel-report/cloud-plot.js';
import { lossBar } from '../../src/preview/reel-report/loss-bars.js';
import { breakLines } from '../../src/preview/reel-report/paragraph.js';
import { makeCanvas } from '../../src/picture/canvas.js';
import { textWidth } from '../../src/preview/text.js';
import { fonts } from './fonts.js';

const even = (width: number, height: number, ...rgb: number[]): Picture =>
  makePicture(
    width,
    height,
    { channels: 3, bits: 8 },
    Uint8Array.from({ length: 3 * width * height }, (_, i) => rgb[i % 3]),
  );

const at = ({ width, data }: Picture, x: number, y: number) => [
  ...data.subarray(3 * (y * width + x), 3 * (y * width + x) + 3),
];

/** Whether any pixel of a box differs from an ink. */
function anyOther(
  { width, data }: Picture,
  box: { x: number; y: number; w: number; h: number },
  ink: readonly number[],
) {
  for (let y = box.y; y < box.y + box.h; y++)
    for (let x = box.x; x < box.x + box.w; x++)
      if (ink.some((value, c) => data[3 * (y * width + x) + c] !== value)) return true;
  return false;
}

const cloud = (points: Triple[]) => ({
  points,
  axis: points,
  named: [{ name: 'darkest', density: points[0] }],
});

function reportOf(changes: Partial<ReelReport> = {}): ReelReport {
  return {
    title: 'Reel of the harbour club',
    headline: 'This reel has lost about 40 % of its cyan dye.',
    corrected: 'as this measurement corrects it',
    stills: [{ name: 'a.png', before: even(640, 480, 150, 90, 80), after: even(640, 480, 80, 90, 150) }],
    before: cloud([[1, 1.5, 1.4]]),
    after: cloud([[1.5, 1.5, 1.5]]),
    bars: [{ name: 'cyan dye', ink: 'cyan', value: 0.4, low: 0.3, high: 0.5, words: '40 % lost' }],
    sureness: 'How sure this is',
    sentences: ['The evidence is fair.'],
    ...changes,
  };
}

describe('drawReelReport', () => {
  it('shows before at the left and after at the right, untouched in colour', () => {
    const page = drawReelReport(reportOf(), fonts);
    expect([page.width, page.channels, page.bits]).toEqual([1600, 3, 8]);
    expect(at(page, 300, 400)).toEqual([150, 90, 80]);
    expect(at(page, 1100, 400)).toEqual([80, 90, 150]);
    expect(page.data.length).toBe(3 * page.width * page.height);
  });

  it('outlines what was marked in the picture before, and not in the one after', () => {
    const marked = [{ name: 'grey', x: 0.25, y: 0.25, width: 0.5, height: 0.5 }];
    const [plain] = reportOf().stills;
    const page = drawReelReport(reportOf({ stills: [{ ...plain, marked }] }), fonts);
    const without = drawReelReport(reportOf(), fonts);
    const [row, light] = [[...Array(700).keys()], [...palette.comparison]];
    const lightAt = (picture: Picture, left: number) =>
      row.filter((x) => at(picture, left + x, 400).every((value, c) => value === light[c])).length;
    expect(lightAt(page, 40)).toBe(2);
    expect(lightAt(page, 820)).toBe(0);
    expect(lightAt(without, 40)).toBe(0);
  });

  it('has room for every still and every sentence, and ends in the surround', () => {
    const [still] = reportOf().stills;
    const sentences = Array.from({ length: 25 }, (_, i) =>
      `Sentence ${i} says something of some length. `.repeat(4),
    );
    const page = drawReelReport(
      reportOf({ stills: Array(14).fill({ ...still, remark: 'x' }), sentences }),
      fonts,
    );
    expect(anyOther(page, { x: 0, y: page.height - 12, w: 1600, h: 12 }, palette.surround)).toBe(false);
    const shorter = drawReelReport(reportOf({ stills: Array(14).fill({ ...still, remark: 'x' }) }), fonts);
    expect(page.height).toBeGreaterThan(shorter.height + 24 * 20);
  });

  it.each([
    ['one pixel', even(1, 1, 9, 9, 9)],
    ['a strip', even(3000, 2, 9, 9, 9)],
    ['a tower', even(2, 3000, 9, 9, 9)],
    ['16 bits grey', makePicture(30, 20, { channels: 1, bits: 16 }, new Uint16Array(600).fill(9999))],
  ])('takes %s', (_, picture) => {
    const still = { name: 'x'.repeat(400), before: picture, after: picture, remark: 'Ωμέγα 漢字 \u0000' };
    const page = drawReelReport(
      reportOf({ stills: [still, still], title: '', headline: '', sentences: [] }),
      fonts,
    );
    expect(page.width).toBe(1600);
    expect(page.height).toBeGreaterThan(700);
  });

  it('takes a cloud without points, and with points no plot holds', () => {
    const none = { points: [], axis: [], named: [] };
    const wild = cloud([
      [40, -40, 0],
      [NaN, 0, 0],
      [Infinity, 1, 1],
    ] as Triple[]);
    for (const pair of [none, wild])
      expect(drawReelReport(reportOf({ before: pair, after: pair }), fonts).width).toBe(1600);
  });
});

describe('the density cloud', () => {
  const box = { x: 0, y: 0, width: 400, height: 200 };
  const draw = (density: Triple, stray: (typeof strays)[keyof typeof strays]) => {
    const canvas = makeCanvas(400, 200, palette.surround);
    const shown = { points: [density], axis: [], named: [] };
    cloudPlot(canvas, box, shown, stray, { darkest: 3, widest: 1 }, fonts);
    return canvas;
  };
  /** Away from the words at the left. */
  const half = (top: boolean) => ({ x: 80, y: top ? 0 : 104, w: 320, h: 96 });

  it.each([
    ['red', 'less density in red is redder', [0.9, 1.3, 1.3], true],
    ['red', 'less density in green is greener', [1.3, 0.9, 1.3], false],
    ['blue', 'less density in blue is bluer', [1.3, 1.3, 0.9], true],
    ['blue', 'more density in blue is yellower', [1, 1, 1.5], false],
  ] as const)('%s: %s', (name, _, density, above) => {
    const canvas = draw(density, strays[name]);
    expect(anyOther(canvas, half(above), palette.bed)).toBe(true);
    expect(anyOther(canvas, half(!above), palette.bed)).toBe(false);
  });

  it('has dark film at the right', () => {
    const columnOf = (density: Triple) => {
      const canvas = draw(density, strays.red);
      return [...Array(320).keys()].find((x) =>
        anyOther(canvas, { x: x + 80, y: 0, w: 1, h: 96 }, palette.bed),
      )!;
    };
    expect(columnOf([2, 2.4, 2.4])).toBeGreaterThan(columnOf([1, 1.4, 1.4]) + 80);
  });

  it('is on one scale for all that is compared, with every named point on it', () => {
    const scale = cloudScale([
      { points: [[0, 0, 0]], axis: [], named: [{ name: 'a', density: [1, 3, 3] }] },
      { points: [[1, 1, 1]], axis: [], named: [] },
    ]);
    expect(scale.darkest).toBeGreaterThan(7 / 3);
    expect(scale.widest).toBeGreaterThan(2);
  });
});

describe('bars and paragraphs', () => {
  it.each([0, 0.25, 1, -3, 7])('a bar of %d is as long as its share, within its track', (value) => {
    const canvas = makeCanvas(800, 40, palette.surround);
    lossBar(canvas, 0, 0, { name: '', ink: 'cyan', value, low: value, high: value, words: '' }, fonts);
    // Row 9 lies in the bar, above the uncertainty: the track is 300 pixels long.
    const row = [...Array(800).keys()].map((x) => at(canvas, x, 9).join());
    const bar = row.filter((ink) => ink !== palette.surround.join() && ink !== palette.bed.join()).length;
    expect(bar).toBe(Math.round(300 * Math.min(1, Math.max(0, value))));
  });

  it.each([
    [0.1, 45],
    [0.25, 0],
    [0.5, 75],
  ])('a bar to %d of a track whose nothing stands at a quarter is %d pixels long', (value, length) => {
    const canvas = makeCanvas(800, 40, palette.surround);
    const stain = { name: '', ink: 'blue', zero: 0.25, value, low: value, high: value, words: '' } as const;
    lossBar(canvas, 0, 0, stain, fonts);
    const paper = [palette.surround, palette.bed, palette.quietText].map((ink) => ink.join());
    const row = [...Array(800).keys()].map((x) => at(canvas, x, 9).join());
    const first = row.findIndex((ink) => !paper.includes(ink));
    expect(row.filter((ink) => !paper.includes(ink)).length).toBeCloseTo(length, -0.5);
    // below nothing the bar ends where nothing stands, above it begins there
    if (length > 0) expect(first - 122).toBe(value < 0.25 ? 30 : 76);
  });

  it('breaks lines between words, none wider than the room', () => {
    const style = { faces: fonts.regular, sizePx: 18 };
    const text = 'What is known in the picture tells more than any reckoning. '.repeat(5);
    const lines = breakLines(style, text, 240);
    expect(lines.join(' ')).toBe(text.trim());
    for (const line of [...lines, ...breakLines(style, 'W'.repeat(300), 240)])
      expect(textWidth(style, line)).toBeLessThanOrEqual(240);
  });
});

import { describe, expect, it } from 'vitest';
import { renderDemoStill, wedgeBoxes } from '../../src/demo/index.js';
import { gateDoubts, greyDoubts, weighMarks } from '../../src/jobs/mark-doubts.js';
import { measureReelToLook } from '../../src/jobs/measure-reel.js';
import type { Rectangle } from '../../src/measure/index.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';

/** The demonstration's still: a wedge at the right edge, black at its foot, white at its top. */
const [width, height] = [240, 180];
const regatta = {
  name: 'regatta.png',
  picture: renderDemoStill('regatta', { width, height, age: 'blue-shifted' }),
};
const part = (x: number, y: number, w: number, h: number) => [
  { still: 1, ...{ x: Math.round(x * width), y: Math.round(y * height) }, width: w, height: h },
];
const foot = part(0.97, 0.93, 6, 10);
const top = part(0.97, 0.01, 6, 10);
const sail = part(0.46, 0.35, 10, 10);
const bricks = part(0.02, 0.7, 8, 8);

const markDoubts = (...given: Parameters<typeof weighMarks>) => weighMarks(...given).doubts;

describe('marks', () => {
  it('where they are what they are said to be are not doubted', () => {
    expect(markDoubts([regatta], { black: foot, clear: top, film: top, neutral: sail })).toEqual([]);
    expect(markDoubts([regatta], {})).toEqual([]);
  });

  it.each([
    ['black', sail, /marked as black is lighter than \d\d % of its still/],
    ['clear', bricks, /marked as clear is darker than \d\d % of its still/],
    ['film', bricks, /marked as clear film is darker than \d\d % of its still/],
  ] as const)('as %s where that cannot be are doubted', (kind, place, words) => {
    const doubts = markDoubts([regatta], { [kind]: place });
    expect(doubts).toEqual([expect.stringMatching(words)]);
  });

  it('are held against their own still, grey, with alpha or of one pixel', () => {
    const filled = (code: number): Picture =>
      makePicture(1, 1, { channels: 2, bits: 16 }, Uint16Array.of(code, 65535));
    const stills = [filled(0), filled(60000)].map((picture, i) => ({ name: `${i}`, picture }));
    const black = [1, 2].map((still) => ({ still, x: 0, y: 0, width: 1, height: 1 }));
    expect(markDoubts(stills, { black, clear: black })).toEqual([]);
  });

  it('that cannot be are left out of what is used, the others stay', () => {
    const { usable } = weighMarks([regatta], { black: [...foot, ...sail], film: top, neutral: sail });
    expect(usable).toMatchObject({ black: foot, film: top, neutral: sail });
  });

  it('of which the lighter must be the darker are doubted, both of them', () => {
    const { doubts, usable } = weighMarks([regatta], { film: top, clear: sail, neutral: foot });
    expect(doubts).toEqual([
      'what is marked as clear film is lighter than what is marked as clear, which cannot be: neither was used',
    ]);
    expect(usable).toMatchObject({ film: [], clear: [], neutral: foot });
  });

  it('are named by their place where there are several of a kind', () => {
    const [{ x, y }] = sail;
    expect(markDoubts([regatta, regatta], { black: [...foot, { ...sail[0], still: 2 }] })).toEqual([
      expect.stringContaining(`marked as black (2:${x},${y},10,10) is lighter than`),
    ]);
    expect(markDoubts([regatta], { black: sail })).toEqual([expect.stringMatching(/black is lighter than/)]);
  });

  it('of grey are doubted when they are still coloured once corrected', () => {
    const point = (after: [number, number, number]) => ({ kind: 'neutral', before: after, after }) as const;
    expect(greyDoubts([point([0.8, 0.85, 0.9])])).toEqual([]);
    expect(greyDoubts([{ ...point([0.2, 0.9, 0.9]), kind: 'film' }])).toEqual([]);
    expect(greyDoubts([point([0.2, 0.9, 0.9])])).toEqual([expect.stringContaining('may not have been grey')]);
  });

  it('of grey are not doubted for what black keeps of colour as well', () => {
    const point = (kind: 'black' | 'neutral', after: [number, number, number]) => ({
      kind,
      before: after,
      after,
    });
    const black = point('black', [2.8, 2.8, 3.2]);
    const warm = point('neutral', [1, 1, 1.3]);
    expect(greyDoubts([warm])).toHaveLength(1);
    expect(greyDoubts([black, warm])).toEqual([]);
    // as much to the other side, elsewhere, or far more of it is its own
    for (const after of [
      [1.3, 1.3, 1],
      [1, 1.3, 1],
      [1, 1, 1.7],
    ] as const)
      expect(greyDoubts([black, point('neutral', [...after])])).toHaveLength(1);
  });

  it('of grey are not doubted in any step of a warm reel’s wedge, where black is marked; coloured bricks are', () => {
    const large = { width: 480, height: 360 };
    const stills = (['regatta', 'tram'] as const).map((name) => ({
      name,
      picture: renderDemoStill(name, { ...large, age: 'warm' }),
    }));
    const [last, ...steps] = wedgeBoxes(large.width, large.height).toReversed();
    const inside = ({ x, y, width, height }: (typeof steps)[number]) => [
      {
        still: 1,
        x: Math.round(x) + 2,
        y: Math.round(y) + 2,
        width: Math.round(width) - 4,
        height: Math.round(height) - 4,
      },
    ];
    const doubtsOf = (neutral: Rectangle[]) =>
      measureReelToLook({ stills, marks: { black: inside(last), neutral }, dyes: 'reversal-late' })
        .measurement.confidence.reasons;
    for (const step of steps) expect(doubtsOf(inside(step)).join()).not.toMatch(/grey is still coloured/);
    const red = [{ still: 1, x: 10, y: 252, width: 16, height: 16 }];
    expect(doubtsOf(red).join()).toMatch(/grey is still coloured/);
  });
});

describe('an open gate as given', () => {
  it('is doubted where much of the picture is lighter than it', () => {
    expect(gateDoubts([regatta.picture], 1)).toEqual([]);
    expect(gateDoubts([regatta.picture], 0.5)).toEqual([
      expect.stringMatching(
        /^the open gate as given is darker than \d\d % of the stills, .*: it was not used$/,
      ),
    ]);
  });
});

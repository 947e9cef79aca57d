import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import type { Triple } from '../../src/maths/matrix3.js';
import { type Marks, measureReel } from '../../src/measure/index.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';
import { type Ageing, frame, known } from './filmed.js';

const dyes = 'reversal-late' as const;
const sound: Ageing = { dyes, loss: [0, 0, 0] };
const pink: Ageing = { dyes, loss: [0.5, 0.05, 0.2] };
const blue: Ageing = { dyes, loss: [0.05, 0.15, 0.5] };
const stills = (seeds: readonly number[], ageing: Ageing, options = {}) =>
  seeds.map((seed) => ({ name: `still ${seed}`, picture: frame(seed, ageing, options) }));
const lossOf = ({ loss }: { loss: { cyan: number; magenta: number; yellow: number } }): Triple => [
  loss.cyan,
  loss.magenta,
  loss.yellow,
];
const marks: Marks = { black: [known.black], clear: [known.clear], neutral: [known.neutral] };

/** The film's own ways are not told from fading, so a loss is known to about this from three stills, from marks a little better. */
const lossTolerance = 0.1;
const markedTolerance = 0.08;

describe('measuring a reel', () => {
  it('leaves a reel in good order exactly as it is, in every mode', () => {
    for (const [given, options] of [
      [stills([1], sound), {}],
      [stills([1, 2, 3], sound), {}],
      [stills([1], sound, { marked: true }), { marks }],
    ] as const) {
      const found = measureReel(given, { encoding: 'srgb', dyes: 'auto', ...options });
      expect(found.leftAsItIs).toBe(true);
      expect(lossOf(found)).toEqual([0, 0, 0]);
      expect(Object.values(found.stain)).toEqual([0, 0, 0]);
      expect(found.cloud.after).toEqual(found.cloud.before);
    }
  });

  it('calls a reel that it leaves as it is in good order only where it is sure of that', () => {
    const found = [1, 2, 3, 4, 5, 6].map((seed) =>
      measureReel(stills([seed], { dyes, loss: [0.03, 0.1, 0.22] }), { encoding: 'srgb', dyes }),
    );
    const left = found.filter(({ leftAsItIs }) => leftAsItIs);
    const unsure = left.filter(({ kinds }) => kinds['good-order'] < 0.75);
    expect(unsure.length).toBeGreaterThan(0);
    for (const { findings, confidence } of unsure) {
      expect(findings[0]).toMatch(/may be/);
      expect(findings[0]).not.toMatch(/looks in good order/);
      expect(confidence.word).toBe('thin');
      expect(confidence.reasons.join()).toMatch(/no black mark to rely on/);
    }
    for (const { findings, kinds } of left.filter((one) => !unsure.includes(one))) {
      expect(kinds['good-order']).toBeGreaterThanOrEqual(0.75);
      expect(findings[0]).toMatch(/looks in good order/);
    }
  });

  it.each([
    ['cyan', [0.5, 0.05, 0.2]],
    ['magenta', [0.1, 0.45, 0.05]],
    ['yellow', [0.05, 0.05, 0.5]],
  ] as const)('finds the loss of %s from three stills', (_, loss) => {
    const found = measureReel(stills([4, 5, 6], { dyes, loss }), { encoding: 'srgb', dyes });
    lossOf(found).forEach((v, k) => expect(Math.abs(v - loss[k])).toBeLessThan(lossTolerance));
    expect(found.leftAsItIs).toBe(false);
  });

  it('finds it from one marked still, with the open gate as marked', () => {
    const given = stills([7], { ...pink, openGate: 0.8 }, { marked: true });
    const found = measureReel(given, { encoding: 'srgb', dyes, marks });
    lossOf(found).forEach((v, k) => expect(Math.abs(v - pink.loss[k])).toBeLessThan(markedTolerance));
    expect(found.openGate).toBeCloseTo(0.8, 3);
    expect(found.openGateFrom).toBe('clear mark');
    const kinds = found.points.map(({ kind }) => kind);
    expect(kinds.sort()).toEqual(['black', 'clear', 'neutral']);
  });

  it('brings the neutral axis back', () => {
    const { points } = measureReel(stills([7], pink, { marked: true }), { encoding: 'srgb', dyes, marks });
    const lean = (amounts: Triple) => Math.max(...amounts) - Math.min(...amounts);
    for (const { kind, before, after } of points)
      if (kind !== 'clear') expect(lean(after)).toBeLessThan(0.3 * lean(before));
  });

  it('does not depend on the order of the stills, and answers alike twice', () => {
    const given = stills([8, 9, 10], pink);
    const options = { encoding: 'srgb', dyes } as const;
    const [a, b] = [measureReel(given, options), measureReel([...given].reverse(), options)];
    lossOf(a).forEach((v, k) => expect(Math.abs(v - lossOf(b)[k])).toBeLessThan(1e-3));
    expect(measureReel(given, options)).toEqual(a);
  });

  it('names a still that speaks against the rest', () => {
    const given = [
      ...stills([11, 12, 13], pink),
      { name: 'stranger', picture: frame(14, { dyes, loss: [0, 0.5, 0] }) },
    ];
    const found = measureReel(given, { encoding: 'srgb', dyes });
    expect(found.disagreeing).toContain('stranger');
    expect(found.confidence.word).not.toBe('good');
  });

  it.each([
    ['pink', 'blue', pink, blue],
    ['blue', 'pink', blue, pink],
  ])('names of two %s stills and a %s one the last, wherever it stands', (_, odd, ageing, other) => {
    const usual = stills([11, 12], ageing);
    const stranger = { name: odd, picture: frame(14, other) };
    for (const given of [
      [stranger, ...usual],
      [...usual, stranger],
    ]) {
      const { disagreeing, confidence } = measureReel(given, { encoding: 'srgb', dyes });
      expect(disagreeing).toEqual([odd]);
      expect(confidence.divided).toBe(false);
      expect(confidence.reasons).toContain(
        `${odd} speaks against the rest, as a still of another reel would`,
      );
    }
  });

  it('has each side speak against the other where neither is the rest', () => {
    const two = [...stills([11], pink), ...stills([14], blue)];
    for (const given of [two, [...two, ...stills([12], pink), ...stills([13], blue)]]) {
      const { disagreeing, confidence } = measureReel(given, { encoding: 'srgb', dyes });
      expect(disagreeing).toEqual(given.map(({ name }) => name));
      expect(confidence).toMatchObject({ word: 'thin', divided: true });
      expect(confidence.reasons.join()).toMatch(/still 1[34] speak against one another/);
      expect(confidence.reasons.join()).not.toMatch(/the rest/);
    }
  });

  it('has nobody speak against stills of one reel', () => {
    for (const ageing of [sound, pink, blue])
      expect(measureReel(stills([11, 12, 13], ageing), { encoding: 'srgb', dyes }).disagreeing).toEqual([]);
  });

  it('gives a reason for every word but good', () => {
    for (const ageing of [sound, pink, { dyes, loss: [0.03, 0.1, 0.22] } as const])
      for (const seeds of [[1], [1, 2], [3, 4, 5]]) {
        const { word, reasons } = measureReel(stills(seeds, ageing), { encoding: 'srgb', dyes }).confidence;
        expect(reasons.length > 0).toBe(word !== 'good');
      }
  });

  it('does not say that nothing is marked where a mark could not be used, and names its still', () => {
    const [{ name, picture }] = stills([7], { ...pink, openGate: 1 }, { marked: true });
    const given = [{ name, picture }];
    const { confidence } = measureReel(given, {
      encoding: 'srgb',
      dyes,
      marks: { clear: [known.clear], neutral: [known.clear], black: [known.clear] },
    });
    const said = confidence.reasons.join('; ');
    expect(said).not.toMatch(/nothing/);
    expect(said).toContain('one still only, with no mark to rely on');
    expect(said).toContain('the marked light is burnt out');
    for (const kind of ['black', 'neutral'])
      expect(said).toContain(`the ${kind} rectangle 32,0,16,16 in still 7 is burnt out or blocked`);
  });

  it('says where the evidence is thin: one still, nothing dark, one colour', () => {
    const alone = measureReel(stills([15], pink), { encoding: 'srgb', dyes });
    expect(alone.confidence.reasons.join()).toContain('one still only');
    const curtain = measureReel(stills([16], sound, { cast: [-0.9, 0.45, 0.45] }), {
      encoding: 'srgb',
      dyes,
    });
    expect(curtain.confidence.word).toBe('thin');
    const even = makePicture(32, 32, { channels: 3, bits: 8 }, new Uint8Array(3072).fill(180));
    const foggy = measureReel([{ name: 'fog', picture: even }], { encoding: 'srgb', dyes: 'auto' });
    expect(foggy.confidence.reasons.join()).toContain('dark enough');
    expect(foggy.leftAsItIs).toBe(true);
  });

  it('stays within a look file', () => {
    const found = measureReel(stills([17], { dyes, loss: [0.9, 0.9, 0.9] }), {
      encoding: 'srgb',
      dyes: 'auto',
    });
    lossOf(found).forEach((v) => expect(v >= 0 && v <= 0.9).toBe(true));
    Object.values(found.stain).forEach((v) => expect(v >= -0.2 && v <= 1).toBe(true));
  });
});

describe('what cannot be measured', () => {
  const flat = (code: number): Picture =>
    makePicture(16, 16, { channels: 3, bits: 8 }, new Uint8Array(768).fill(code));
  const options = { encoding: 'srgb', dyes: 'auto' } as const;

  it('refuses no stills', () => {
    expect(() => measureReel([], options)).toThrow(InputError);
  });

  it.each([0, 255])('refuses a still whose codes are all %s, by name', (code) => {
    const given = [
      { name: 'grey', picture: flat(128) },
      { name: 'end', picture: flat(code) },
    ];
    expect(() => measureReel(given, options)).toThrow(
      expect.objectContaining({ problems: [expect.objectContaining({ file: 'end' })] }),
    );
  });

  it('refuses marks outside the stills', () => {
    const given = [{ name: 'grey', picture: flat(128) }];
    const outside = { black: [{ still: 1, x: 10, y: 0, width: 10, height: 10 }] };
    expect(() => measureReel(given, { ...options, marks: outside })).toThrow(InputError);
  });
});

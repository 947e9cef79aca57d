import { describe, expect, it } from 'vitest';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { InputError } from '../../src/errors/input-error.js';
import { checkMarks, densitiesOf, readMarks, type Rectangle } from '../../src/measure/marks.js';
import { makePicture } from '../../src/picture/picture.js';

const still = (code: number) => makePicture(10, 8, { channels: 3, bits: 8 }, new Uint8Array(240).fill(code));
const rectangle = (changes: Partial<Rectangle> = {}): Rectangle => ({
  still: 1,
  x: 2,
  y: 2,
  width: 4,
  height: 4,
  ...changes,
});

function problems(marks: Parameters<typeof checkMarks>[0]): string[] {
  try {
    checkMarks(marks, [still(100)]);
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ field, what }) => `${field}: ${what}`);
    throw error;
  }
  return [];
}

describe('marks', () => {
  it('accepts rectangles up to the edge', () => {
    expect(problems({ black: [rectangle({ x: 0, y: 0, width: 10, height: 8 })], clear: [] })).toEqual([]);
  });

  it('names every rectangle that cannot be used', () => {
    expect(
      problems({
        black: [rectangle({ still: 2 })],
        neutral: [rectangle({ x: 7 }), rectangle({ height: 1 })],
      }),
    ).toEqual([
      'black 2:2,2,4,4: there is no still 2',
      'neutral 1:7,2,4,4: the rectangle reaches beyond the still',
      'neutral 1:2,2,4,1: the rectangle is too small',
    ]);
  });

  it.each([NaN, Infinity, -1, 1.5])('refuses %s as a place', (x) => {
    expect(problems({ film: [rectangle({ x })] })).toHaveLength(1);
  });

  it('reads the mean light and its density', () => {
    const [{ light }] = readMarks([rectangle()], [still(128)], transferFunctions.linear, 'neutral');
    light!.forEach((v) => expect(v).toBeCloseTo(128 / 255, 9));
    densitiesOf(light!, 128 / 255).forEach((d) => expect(d).toBeCloseTo(0, 9));
    densitiesOf(light!, 1280 / 255).forEach((d) => expect(d).toBeCloseTo(1, 9));
  });

  it('does not read what is burnt out or blocked', () => {
    for (const code of [0, 255])
      expect(
        readMarks([rectangle()], [still(code)], transferFunctions.srgb, 'neutral')[0].light,
      ).toBeUndefined();
    const green = new Uint8Array(300).map((_, i) => (i % 3 === 1 ? 9 : 0));
    const dark = makePicture(10, 10, { channels: 3, bits: 8 }, green);
    const reads = (kind: 'black' | 'neutral') =>
      readMarks([rectangle()], [dark], transferFunctions.srgb, kind)[0];
    expect(reads('neutral').light).toBeUndefined();
    // a black whose magenta is gone: red and blue end at code 0, green tells
    reads('black').light!.forEach((v) => expect(v).toBeGreaterThan(0));
    expect(readMarks(undefined, [still(0)], transferFunctions.srgb, 'neutral')).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GaugeName } from '../../src/capture/gauge.js';
import { gauges } from '../../src/capture/gauge.js';
import { exposureText, parseRate, rateText } from '../../src/capture/rate.js';
import type { CaptureRequest } from '../../src/capture/request.js';
import { sheetText } from '../../src/capture/sheet-text.js';
import { captureSheet } from '../../src/capture/sheet.js';
import { InputError } from '../../src/errors/input-error.js';

const reel: CaptureRequest = { gauge: 'super8', feet: 50, filmFps: 18, blades: 3, cameraFps: 25 };

function problemsOf(request: CaptureRequest) {
  try {
    captureSheet(request);
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
}

describe('capture sheet', () => {
  it('50 feet of Super 8 at 18 fps with three blades', () => {
    const sheet = captureSheet(reel);
    expect(sheet.film.frames).toBe(3600);
    expect(sheet.asItRuns.seconds).toBeCloseTo(200, 9);
    expect(sheet.asItRuns.exposures.map(({ exposureS }) => exposureText(exposureS))).toEqual([
      '1/54 s',
      '1/27 s',
    ]);
    expect(sheet.asItRuns.exposures[0].angle).toBeCloseTo(360 * (25 / 54), 9);
    expect(sheet.trimmed?.filmFps).toBeCloseTo(50 / 3, 9);
    expect(sheet.trimmed?.speed.correction).toBeCloseTo(1.08, 9);
    expect(sheet.storage.gb).toBeCloseTo((4 * 216) / 60, 9);
  });

  it('says the same of feet and of metres', () => {
    expect(captureSheet({ ...reel, feet: undefined, metres: 15.24 }).film.frames).toBe(3600);
  });

  it('offers no trim that no projector reaches', () => {
    expect(captureSheet({ ...reel, blades: 1, cameraFps: 50 }).trimmed).toBeUndefined();
  });

  it('lays the projected picture into the video frame as large as it goes', () => {
    expect(captureSheet(reel).framing).toMatchObject({ width: 2860, height: 2160 });
  });

  it('warns of a disk that is too small, and of a speed to put right', () => {
    const cautions = captureSheet({ ...reel, shotFps: 16, freeBytes: 10e9 }).cautions.join('\n');
    expect(cautions).toContain('not enough free space');
    expect(cautions).toContain('Play the recording at 88.9 %');
  });

  it('names every field that cannot be used', () => {
    const wrong = { ...reel, gauge: 'supr8' as GaugeName, metres: 3, blades: 2.5, filmFps: NaN, offered: [] };
    expect(problemsOf(wrong).map(({ field }) => field)).toEqual([
      'gauge',
      'feet',
      'filmFps',
      'blades',
      'offered',
    ]);
    expect(problemsOf(wrong)[0].hint).toBe('Did you mean "super8"?');
  });

  it.each([0, -1, NaN, Infinity])('refuses %d wherever a number is asked for', (value) => {
    for (const field of ['feet', 'filmFps', 'shotFps', 'blades', 'openShare', 'cameraFps', 'width', 'mbitS'])
      expect(problemsOf({ ...reel, [field]: value }).map((problem) => problem.field)).toEqual([field]);
  });

  it('says once what a projector does that runs with the camera already', () => {
    const locked = sheetText(captureSheet({ ...reel, filmFps: 24, cameraFps: 24 }));
    expect(locked).toMatch(/^Projector trimmed: no need, as it runs it stands still against the camera$/m);
    expect(locked.match(/running time/g)).toHaveLength(1);
    expect(locked).toMatch(/pattern +1 film frame in 1 video frame$/m);
    expect(locked).toMatch(/blended +0\.0 %, 16\.7 %\n +means of all phases; a run that repeats keeps/);
  });

  it('any allowed shoot gives a finite sheet that prints in plain ASCII lines', () => {
    const request = fc.record({
      gauge: fc.constantFrom(...(Object.keys(gauges) as GaugeName[])),
      feet: fc.double({ min: 0.1, max: 20000, noNaN: true }),
      filmFps: fc.double({ min: 1, max: 100, noNaN: true }),
      blades: fc.integer({ min: 1, max: 6 }),
      cameraFps: fc.double({ min: 1, max: 480, noNaN: true }),
      freeBytes: fc.integer({ min: 0, max: 1e15 }),
    });
    fc.assert(
      fc.property(request, (given) => {
        const text = sheetText(captureSheet(given));
        expect(text).toMatch(/^[\x20-\x7e\n]+\n$/);
        expect(text).not.toMatch(/NaN|undefined/);
        expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(110);
      }),
      { seed: 9, numRuns: 200 },
    );
  });
});

describe('rates and times as people write them', () => {
  it.each([
    ['18', 18],
    ['16 2/3', 50 / 3],
    ['16.67', 50 / 3],
    ['50/3', 50 / 3],
    ['29.97', 30000 / 1001],
    ['23.976', 24000 / 1001],
    ['1/54', 1 / 54],
  ])('%s', (text, value) => expect(parseRate(text, 'fps')).toBe(value));

  it.each(['', '0', '-18', '1/0', '18,5', 'fast', 'Infinity', '1e3', '1/2/3'])('refuses "%s"', (text) => {
    expect(() => parseRate(text, 'fps')).toThrow(InputError);
  });

  it('writes thirds as thirds', () => {
    expect([50 / 3, 100 / 3, 18, 30000 / 1001].map(rateText)).toEqual(['16 2/3', '33 1/3', '18', '29.97']);
  });
});

import { describe, expect, it } from 'vitest';
import { overallNoise } from '../../src/capture/exposure-advice.js';
import { testExposure } from '../../src/capture/exposure-test.js';
import { exposureText } from '../../src/capture/exposure-text.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import type { Triple } from '../../src/maths/matrix3.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';
import { grey, makeStill, type StillMaking } from './stills.js';

const signal = { decode: transferFunctions.srgb.decode, range: 'full' } as const;

/** A frame with steps from 0.01 to `brightest` of light; flat fields, as a wedge. */
const wedge = (brightest: number) => (x: number) => 0.01 * (brightest / 0.01) ** (Math.floor(8 * x) / 7);

/** The frame at several exposures, in stops. */
function seriesOf(stops: readonly number[], making: StillMaking = {}, brightest = 0.5) {
  const light = wedge(brightest);
  return stops.map((stop, i) => ({
    name: `level-${i + 1}.png`,
    picture: makeStill((x) => grey(light(x) * 2 ** stop), { noise: 0.02, seed: i + 1, ...making }),
  }));
}

const noiseOf = (test: ReturnType<typeof testExposure>) =>
  test.stills.map(({ shadowNoisePercent }) => overallNoise(shadowNoisePercent!));

it('names that are too long for the table stay apart there', () => {
  const named = seriesOf([-1, 0]).map(({ picture }, i) => ({
    picture,
    name: `summer/reel-of-the-regatta/with-the-lamp-at-${30 + 20 * i}.png`,
  }));
  const rowsOf = (stills: typeof named, name: RegExp) => {
    const rows = exposureText(testExposure(stills, signal)).match(name)!;
    expect(rows).toHaveLength(2);
    expect(rows[0].slice(2)).not.toBe(rows[1].slice(2));
    return rows;
  };
  expect(rowsOf(named, /^[ >] with\S+/gm)[0]).toContain('with-the-lamp-at-30.png');
  const end = '-and-the-sensitivity-at-its-lowest.png';
  const longer = named.map(({ picture, name }) => ({ picture, name: name.replace('.png', end) }));
  expect(rowsOf(longer, /^[ >] with\S+/gm)[0]).toContain('...');
});

describe('what is lost at the ends', () => {
  it('counts burnt-out and blocked pixels by channel', () => {
    const width = 100;
    const still = makePicture(width, 100, { channels: 3, bits: 8 });
    still.data.fill(120);
    // 7 % red, 2 % green burnt out; 11 % blue blocked.
    for (let i = 0; i < 700; i++) still.data[3 * i] = 255;
    for (let i = 0; i < 200; i++) still.data[3 * i + 1] = 255;
    for (let i = 5000; i < 6100; i++) still.data[3 * i + 2] = 0;
    const [{ burntOutPercent, blockedPercent }] = testExposure(
      [{ name: 'a', picture: still }],
      signal,
    ).stills;
    expect(burntOutPercent).toEqual([7, 2, 0]);
    expect(blockedPercent).toEqual([0, 0, 11]);
  });

  it('counts at 16 bits what ten bits hold, and in the legal range at its own ends', () => {
    const codes = (...shares: number[]) =>
      makePicture(
        4,
        1,
        { channels: 1, bits: 16 },
        Uint16Array.from(shares, (share) => Math.round(65535 * share)),
      );
    const full = testExposure([{ name: 'a', picture: codes(1023 / 1023.99, 0.5, 0.5, 0) }], signal).stills[0];
    expect([full.burntOutPercent[0], full.blockedPercent[0]]).toEqual([25, 25]);
    const legal = { ...signal, range: 'legal' as const };
    const video = testExposure([{ name: 'a', picture: codes(941 / 1023, 0.5, 64 / 1023, 1 / 1023) }], legal)
      .stills[0];
    expect([video.burntOutPercent[0], video.blockedPercent[0]]).toEqual([25, 50]);
  });

  it('looks at the given area only', () => {
    const still = makeStill((x) => grey(x < 0.5 ? 2 : 0.3));
    const [inside] = testExposure([{ name: 'a', picture: still }], signal, {
      x: 160,
      y: 10,
      width: 100,
      height: 100,
    }).stills;
    expect(inside.burntOutPercent).toEqual([0, 0, 0]);
  });
});

describe('headroom', () => {
  it('is the distance from the brightest parts to the end of the scale', () => {
    const [still] = testExposure(seriesOf([0], { noise: 0 }), signal).stills;
    // A level of the count holds 64 of 65536 codes: at code 0.73 of sRGB that is 0.2 % of the light.
    expect(Math.abs(still.headroomStops! - 1)).toBeLessThan(0.005);
  });

  it('of a burnt-out still is told from one that is not', () => {
    const test = testExposure(seriesOf([0, 1.7], { noise: 0 }), signal);
    expect(test.stills[1].exposureStops).toBeCloseTo(1.7, 2);
    expect(test.stills[1].headroomStops).toBeCloseTo(1 - 1.7, 2);
  });

  it('is unknown where every still is burnt out', () => {
    const test = testExposure(seriesOf([1.5, 2.5]), signal);
    expect(test.stills.map(({ headroomStops }) => headroomStops)).toEqual([undefined, undefined]);
    expect(test.advice).toBe('go-down');
    expect(exposureText(test)).toMatch(/Take none of these/);
  });

  it('calls no black still burnt out, and reads no noise where all is at an end', () => {
    const [white, black] = [1, 0].map((light) => ({
      name: `${light}`,
      picture: makeStill(() => grey(light)),
    }));
    const test = testExposure([white, black], signal);
    expect(test.stills.map(({ shadowNoisePercent }) => shadowNoisePercent)).toEqual([undefined, undefined]);
    expect(exposureText(test)).toMatch(/none of these: what shows anything is burnt out\./);
    expect(exposureText(testExposure([white], signal))).toMatch(/none of these: all are burnt out\./);
  });

  it('ignores specks: fewer than one pixel in a thousand', () => {
    const still = makeStill(() => grey(0.25));
    still.data.fill(65535, 0, 3 * 70);
    const [{ headroomStops }] = testExposure([{ name: 'a', picture: still }], signal).stills;
    expect(Math.abs(headroomStops! - 2)).toBeLessThan(0.006);
  });
});

describe('exposure between stills', () => {
  it('is found over a wide range, from one still to the next', () => {
    const test = testExposure(seriesOf([0, -3, 2, -1]), signal);
    test.stills.forEach(({ exposureStops }, i) =>
      expect(Math.abs(exposureStops! - [0, -3, 2, -1][i])).toBeLessThan(0.02),
    );
    expect(test.sameFrame).toBe(true);
  });

  it('says so when the light changes its colour with its level', () => {
    const warm = (x: number): Triple => [
      0.3 * wedge(0.5)(x) * 1.25,
      0.3 * wedge(0.5)(x),
      0.3 * wedge(0.5)(x) * 0.8,
    ];
    const stills = [seriesOf([0])[0], { name: 'dimmed.png', picture: makeStill(warm) }];
    const test = testExposure(stills, signal);
    expect(test.colourChangeStops).toBeCloseTo(Math.log2(1.25 / 0.8), 2);
    expect(exposureText(test)).toMatch(/set the white balance again/);
  });

  it('says so when the stills are not of one frame', () => {
    const other = { name: 'other.png', picture: makeStill((x) => grey(wedge(0.5)(1 - x))) };
    const test = testExposure([...seriesOf([0]), other], signal);
    expect(test.sameFrame).toBe(false);
    expect(test.advice).toBe('not-one-frame');
    expect(exposureText(test)).toMatch(/Take none .* do not look like one and the same frame/);
    expect(exposureText(test)).not.toMatch(/^>/m);
  });
});

describe('noise in the shadows', () => {
  /** Blocks of 256 pixels, half a dozen and more of them: the median of their deviations is known to about 3 %. */
  const blockSampling = 0.05;

  it.each([0.01, 0.03, 0.1])('reads a known noise of %d of the light back', (noise) => {
    const [found] = noiseOf(testExposure(seriesOf([0], { noise }), signal));
    expect(Math.abs(found / (100 * noise) - 1)).toBeLessThan(blockSampling);
  });

  it('does not take drawing or a gradient for noise', () => {
    // Flat and sloping shadows among fine texture.
    const frame = (x: number, y: number) =>
      grey(y < 0.3 ? 0.02 + 0.01 * x : 0.1 + 0.05 * Math.sin(300 * x) * Math.cos(200 * y));
    const picture = makeStill(frame, { noise: 0.02 });
    const [found] = noiseOf(testExposure([{ name: 'a', picture }], signal));
    expect(Math.abs(found / 2 - 1)).toBeLessThan(blockSampling);
  });

  it('is not read from shadows that are blocked', () => {
    const [still] = testExposure(seriesOf([-9], { bits: 8 }), signal).stills;
    expect(still.shadowNoisePercent).toBeUndefined();
  });
});

describe('which still to take', () => {
  it('the one with the cleanest shadows among those that keep their highlights', () => {
    // Brightest parts at 0.5: +0.5 leaves half a stop, less what noise adds at the top; +1.5 is burnt out. Noise falls as light rises.
    const stills = [-1.5, -0.5, 0.5, 1.5].map((stop, i) => ({
      ...seriesOf([stop], { noise: 0.04 * 2 ** (-stop / 2), seed: i })[0],
      name: `lamp-${i}.png`,
    }));
    const test = testExposure(stills, signal);
    expect(test.stills[test.take].name).toBe('lamp-2.png');
    expect(test.advice).toBe('take');
    expect(exposureText(test)).toMatch(
      /Take lamp-2\.png\. It keeps its highlights with 0\.[34] stops to spare/,
    );
  });

  it('the one with more room where the shadows are as clean', () => {
    const test = testExposure(seriesOf([-0.5, 0.2]), signal);
    expect(test.take).toBe(0);
    // 1.5 stops of room, but the brighter still is no cleaner: more light is not advised.
    expect(test.advice).toBe('take');
    expect(testExposure(seriesOf([-0.5]), signal).advice).toBe('take-or-go-up');
  });

  it('says that more light would be better, or less safer', () => {
    expect(testExposure(seriesOf([-3]), signal).advice).toBe('take-or-go-up');
    const tight = testExposure(seriesOf([0.9], { noise: 0 }), signal);
    expect(tight.advice).toBe('take-or-go-down');
    expect(exposureText(tight)).toMatch(/Safer: 0\.\d stops less light/);
  });
});

describe('where the channels end', () => {
  it('is seen from stills of different exposure that end at one level below the last code', () => {
    const test = testExposure(seriesOf([0, 1.5, 2.2], { ceiling: 0.94 }), signal);
    expect(test.ceilingFound).toBeCloseTo(0.94, 2);
    expect(test.stills[1].burntOutPercent[0]).toBeGreaterThan(5);
    expect(test.stills[0].burntOutPercent[0]).toBe(0);
    expect(exposureText(test)).toMatch(/end at 9[34]\.\d % of the scale/);
  });

  it('is not taken from bright parts that are only bright', () => {
    expect(testExposure(seriesOf([-1, -0.5, 0]), signal).ceilingFound).toBeUndefined();
    expect(testExposure(seriesOf([0], { ceiling: 0.7 }), signal).ceilingFound).toBeUndefined();
  });
});

describe('any stills', () => {
  const filled = (width: number, height: number, code: number): Picture =>
    makePicture(width, height, { channels: 3, bits: 8 }, new Uint8Array(3 * width * height).fill(code));
  it.each([
    ['black', filled(64, 48, 0)],
    ['white', filled(64, 48, 255)],
    ['one pixel', filled(1, 1, 90)],
    ['grey and alpha', makePicture(40, 40, { channels: 2, bits: 16 }, new Uint16Array(3200).fill(9000))],
  ])('%s: words without NaN', (_, picture) => {
    const text = exposureText(testExposure([{ name: 'a.png', picture }], signal));
    expect(text).not.toMatch(/NaN|undefined|Infinity|-0\.0/);
    expect(text).toMatch(/^[\x20-\x7e\n]+$/);
  });

  it('of two sizes, or none, are the fault of a caller', () => {
    expect(() => testExposure([], signal)).toThrow(RangeError);
    const two = [filled(4, 4, 1), filled(5, 4, 1)].map((picture) => ({ name: 'a', picture }));
    expect(() => testExposure(two, signal)).toThrow(RangeError);
  });
});

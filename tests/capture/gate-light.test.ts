import { describe, expect, it } from 'vitest';
import { colourTemperatureRows } from '../../shared/check-values/lights.js';
import { measureGateLight } from '../../src/capture/gate-light.js';
import { isReady } from '../../src/capture/capture-finding.js';
import { gateLightFindings } from '../../src/capture/gate-light-findings.js';
import { correlatedColourTemperature, xyzOfXy } from '../../src/colour/chromaticity.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { invert3, transform3, type Triple } from '../../src/maths/matrix3.js';
import { expandGrey, makePicture } from '../../src/picture/picture.js';
import { grey, makeStill } from './stills.js';

const signal = { decode: transferFunctions.srgb.decode, range: 'full', primaries: primaries.bt709 } as const;
const fromXyz = invert3(rgbToXyz(primaries.bt709));

/** Linear BT.709 of a chromaticity, its highest channel at `level`. */
function lit([x, y]: readonly [number, number], level = 0.8): Triple {
  const rgb = transform3(fromXyz, xyzOfXy([x, y]));
  const scale = level / Math.max(...rgb);
  return [scale * rgb[0], scale * rgb[1], scale * rgb[2]];
}

/**
 * The published rows come from a locus summed at 1 nm, 360 to 830 nm, ours from 5 nm, 380 to 780 nm: they lie up to 0.04
 * mired and 4e-5 apart (planckOneNm in tests/tolerances.ts). Half a 16-bit code moves a tenth of that.
 */
const locusMired = 0.05;
const locusDuv = 5e-5;

/** The most that half an 8-bit code in every channel, each way, moves the temperature of a light. */
function eightBitKelvin(light: Triple): number {
  const { encode, decode } = transferFunctions.srgb;
  const kelvinOf = (rgb: Triple) =>
    correlatedColourTemperature(transform3(rgbToXyz(primaries.bt709), rgb)).kelvin;
  const moved = [...Array(8).keys()].map((signs): Triple => {
    const move = (c: 0 | 1 | 2) => decode(encode(light[c]) + ((signs >> c) % 2 === 0 ? 0.5 : -0.5) / 255);
    return [move(0), move(1), move(2)];
  });
  return Math.max(...moved.map((rgb) => Math.abs(kelvinOf(rgb) - kelvinOf(light))));
}

/** Rounding of 16-bit sRGB codes from light 0.1 up, in stops. */
const roundingStops = 5e-4;

const measured = (lightAt: (x: number, y: number) => Triple, making = {}) =>
  measureGateLight(makeStill(lightAt, making), signal);

const sentencesOf = (light: ReturnType<typeof measureGateLight>) =>
  gateLightFindings(light)
    .map(({ sentence, hint = '' }) => `${sentence} ${hint}`)
    .join('\n');

describe('white balance of a gate light', () => {
  it.each(colourTemperatureRows)('reads $name back', ({ xy, kelvin, duv }) => {
    const { balance } = measured(() => lit(xy));
    expect(Math.abs(1e6 / balance!.kelvin - 1e6 / kelvin)).toBeLessThan(locusMired);
    const white = colourTemperatureRows.find(({ name }) => name === 'D65 rounded')!;
    expect(Math.abs(balance!.duvShift - (duv - white.duv))).toBeLessThan(2 * locusDuv);
    expect(balance!.miredShift).toBeCloseTo(1e6 / balance!.kelvin - 1e6 / balance!.whiteKelvin, 9);
  });

  it('reads illuminant A back from an 8-bit still with noise', () => {
    const [{ xy, kelvin }] = colourTemperatureRows;
    const { balance } = measured(() => lit(xy), { bits: 8, noise: 0.02 });
    expect(Math.abs(balance!.kelvin - kelvin)).toBeLessThan(eightBitKelvin(lit(xy)));
  });

  it('finds nothing wrong with what the camera sees as neutral', () => {
    const light = measured((x) => grey(0.7 - 0.02 * x));
    expect(light.balance!.miredShift).toBeCloseTo(0, 6);
    expect(light.balance!.duvShift).toBeCloseTo(0, 9);
    expect(isReady(gateLightFindings(light))).toBe(true);
    expect(gateLightFindings(light).map(({ verdict }) => verdict)).toEqual(['good', 'good', 'good', 'good']);
  });

  it('speaks in the kelvin of the camera, where they are given: the same shift in mired', () => {
    const still = makeStill(() => lit([0.31272, 0.32903]));
    const warm = measureGateLight(
      makeStill(() => lit([0.33242, 0.34743])),
      { ...signal, balanceKelvin: 3200 },
    );
    const shift = 1e6 / 5502.7 - 1e6 / 6504.2;
    expect(warm.balance!.whiteKelvin).toBe(3200);
    expect(warm.balance!.kelvin).toBeCloseTo(1e6 / (1e6 / 3200 + shift), 0);
    expect(measureGateLight(still, { ...signal, balanceKelvin: 3200 }).balance!.kelvin).toBeCloseTo(3200, -1);
  });

  it('does not depend on how bright the light is, nor on how it was written', () => {
    const bright = measured(() => lit([0.33242, 0.34743], 0.9)).balance!;
    const dim = measured(() => lit([0.33242, 0.34743], 0.3)).balance!;
    const linear = measureGateLight(
      makeStill(() => lit([0.33242, 0.34743]), { encode: (light) => light }),
      {
        ...signal,
        decode: transferFunctions.linear.decode,
      },
    ).balance!;
    expect(dim.kelvin).toBeCloseTo(bright.kelvin, -1);
    expect(linear.kelvin).toBeCloseTo(bright.kelvin, -1);
  });

  it.each<[string, Triple, RegExp]>([
    ['too warm', [0.8, 0.7, 0.55], /too warm \(red\).*turn the lamp cooler/],
    ['too cool', [0.55, 0.65, 0.8], /too cool \(blue\).*turn the lamp warmer/],
    ['too green', [0.7, 0.8, 0.7], /too green.*filter it pinker \(minus green\)/],
    ['too pink', [0.8, 0.7, 0.8], /too pink \(magenta\).*filter it greener \(plus green\)/],
  ])('says which way to turn a light that is %s', (_, light, words) => {
    expect(sentencesOf(measured(() => light))).toMatch(words);
  });

  it('names no colour temperature for a coloured light', () => {
    const light = measured(() => [0.2, 0.8, 0.1]);
    expect(sentencesOf(light)).toMatch(/too strongly coloured/);
    expect(isReady(gateLightFindings(light))).toBe(false);
  });
});

describe('evenness of a gate light', () => {
  it('reads corners that are darker by known stops, and nothing else', () => {
    // The outer sixteenth of the width and twelfth of the height at each corner, by 0.25, 0.5, 0.75 and 1 stop.
    const stopsAt = (x: number, y: number) => {
      const [left, right, top, bottom] = [x < 1 / 16, x > 15 / 16, y < 1 / 12, y > 11 / 12];
      if (top) return left ? 0.25 : right ? 0.5 : 0;
      return bottom ? (left ? 0.75 : right ? 1 : 0) : 0;
    };
    const { corners, spreadStops } = measured((x, y) => grey(0.8 * 2 ** -stopsAt(x, y))).evenness!;
    expect(Math.abs(corners.topLeft + 0.25)).toBeLessThan(roundingStops);
    expect(Math.abs(corners.topRight + 0.5)).toBeLessThan(roundingStops);
    expect(Math.abs(corners.bottomLeft + 0.75)).toBeLessThan(roundingStops);
    expect(Math.abs(corners.bottomRight + 1)).toBeLessThan(roundingStops);
    expect(Math.abs(spreadStops - 1)).toBeLessThan(roundingStops);
  });

  it('reads the natural fall-off of a lens, cos^4 of the field angle, from a noisy 8-bit still', () => {
    // Half the diagonal under 35 degrees; distances in units of half the diagonal of a 4:3 frame.
    const edge = Math.tan((35 * Math.PI) / 180);
    const fallOff = (x: number, y: number) => {
      const r = 2 * Math.hypot(0.8 * (x - 0.5), 0.6 * (y - 0.5));
      return Math.cos(Math.atan(r * edge)) ** 4;
    };
    const { evenness } = measured((x, y) => grey(0.9 * fallOff(x, y)), { bits: 8, noise: 0.03 });
    const cells = [...Array(192).keys()].map((i) =>
      fallOff(((i % 16) + 0.5) / 16, (Math.floor(i / 16) + 0.5) / 12),
    );
    const brightest = cells.sort((a, b) => b - a).slice(0, 12);
    const peak = brightest.reduce((sum, light) => sum + light, 0) / 12;
    const corner = Math.log2(fallOff(0.5 / 16, 0.5 / 12) / peak);
    // A cell of 400 pixels averages the noise to 0.2 %, 0.003 stops; inside a corner cell the law bends a little.
    for (const stops of Object.values(evenness!.corners))
      expect(Math.abs(stops - corner)).toBeLessThan(0.012);
    expect(Math.abs(evenness!.hotSpot.across - 0.5)).toBeLessThan(1 / 16);
    expect(Math.abs(evenness!.hotSpot.down - 0.5)).toBeLessThan(1 / 12);
  });

  it.each([
    [0.25, 0.3, 'at the top left'],
    [0.75, 0.5, 'at the right'],
    [0.5, 0.8, 'at the bottom'],
  ])('finds a hot spot at %d, %d', (across, down, words) => {
    const light = measured((x, y) =>
      grey(0.4 + 0.4 * Math.exp(-((x - across) ** 2 + (y - down) ** 2) / 0.06)),
    );
    expect(Math.abs(light.evenness!.hotSpot.across - across)).toBeLessThan(1 / 16);
    expect(Math.abs(light.evenness!.hotSpot.down - down)).toBeLessThan(1 / 12);
    expect(sentencesOf(light)).toContain(`brightest ${words}`);
  });

  it('finds the bright ring about a dark middle, and the brighter of two spots', () => {
    const bump = (r: number) => Math.exp(-(r ** 2) / 0.01);
    const ring = measured((x, y) => grey(0.4 + 0.4 * bump(Math.hypot(x - 0.5, y - 0.5) - 0.35)));
    const { across, down } = ring.evenness!.hotSpot;
    // half a cell across and down
    expect(Math.abs(Math.hypot(across - 0.5, down - 0.5) - 0.35)).toBeLessThan(0.06);
    expect(sentencesOf(ring)).not.toContain('brightest in the middle');
    const two = measured((x, y) =>
      grey(0.3 + 0.4 * bump(Math.hypot(x - 0.15, y - 0.5)) + 0.38 * bump(Math.hypot(x - 0.85, y - 0.5))),
    );
    expect(Math.abs(two.evenness!.hotSpot.across - 0.15)).toBeLessThan(1 / 16);
  });

  it('is not misled by dust', () => {
    const dusty = measured((x, y) => grey((100 * x) % 10 < 1 && (80 * y) % 10 < 3 ? 0.05 : 0.7));
    expect(dusty.evenness!.spreadStops).toBeLessThan(roundingStops);
  });

  it('leaves out the dark mask of the gate with its round corners', () => {
    const inMask = (x: number, y: number) => {
      const [dx, dy] = [Math.max(0, Math.abs(x - 0.5) - 0.36), Math.max(0, Math.abs(y - 0.5) - 0.36)];
      return Math.hypot(dx, dy) > 0.04;
    };
    const { field, evenness } = measured((x, y) => grey(inMask(x, y) ? 0.004 : 0.7));
    expect(field.x).toBeGreaterThanOrEqual(32);
    expect(field.x + field.width).toBeLessThanOrEqual(288);
    expect(field.width).toBeGreaterThan(0.85 * 256);
    expect(evenness!.spreadStops).toBeLessThan(roundingStops);
  });

  it('finds colour that drifts from side to side', () => {
    const light = measured((x) => [0.5 + 0.2 * x, 0.6, 0.7 - 0.2 * x]);
    const drift = gateLightFindings(light).find(({ name }) => name === 'evenness of colour')!;
    expect(drift.verdict).toBe('fault');
    expect(light.evenness!.corners.topLeft).toBeGreaterThan(-0.1);
  });
});

describe('exposure of a gate light', () => {
  it.each([
    [0.25, 2],
    [0.5, 1],
    [0.8, Math.log2(1 / 0.8)],
  ])('light %d leaves its stops', (level, stops) => {
    // A level of the count holds 64 of 65536 codes: at code 0.54 of sRGB that is 0.3 % of the light.
    expect(Math.abs(measured(() => grey(level)).exposure.stopsLeft! - stops)).toBeLessThan(0.006);
  });

  it.each([
    [0.7, 'good'],
    [0.4, 'note'],
    [0.02, 'fault'],
  ])('light %d of the scale is %s', (level, verdict) => {
    const findings = gateLightFindings(measured(() => grey(level), { noise: 0.03 }));
    expect(findings.find(({ name }) => name === 'exposure')!.verdict).toBe(verdict);
  });

  it('names the channel that clips first', () => {
    expect(measured(() => [0.5, 0.6, 0.9]).exposure.firstToClip).toBe(2);
    expect(measured(() => [0.9, 0.6, 0.5]).exposure.firstToClip).toBe(0);
  });

  it('says how far one channel has gone over, from the others', () => {
    const overBy = 0.6;
    const light = measured((x) => [
      2 ** overBy * (x > 0.5 ? 1 : 0.5),
      x > 0.5 ? 0.7 : 0.35,
      x > 0.5 ? 0.6 : 0.3,
    ]);
    expect(light.exposure.burntOutPercent[0]).toBeCloseTo(50, 6);
    expect(Math.abs(light.exposure.stopsLeft! + overBy)).toBeLessThan(0.01);
    expect(sentencesOf(light)).toMatch(/0\.6 stops down; red clips first/);
    expect(isReady(gateLightFindings(light))).toBe(false);
  });

  it('does not claim to know how far over a white still is', () => {
    const light = measured(() => grey(3));
    expect(light.exposure.stopsLeft).toBeUndefined();
    expect(light.balance).toBeUndefined();
    expect(light.evenness).toBeUndefined();
    expect(sentencesOf(light)).toMatch(/nothing is left to tell how far/);
  });

  it('takes the ceiling of a camera that never reaches the last code', () => {
    const still = makeStill(() => grey(3), { ceiling: 0.9 });
    expect(measureGateLight(still, { ...signal, ceiling: 0.9 }).exposure.burntOutPercent).toEqual([
      100, 100, 100,
    ]);
    expect(measureGateLight(still, signal).exposure.burntOutPercent).toEqual([0, 0, 0]);
  });

  it('doubts a level below the last code that much of the still has: the camera may end there', () => {
    // Red alone is cut, on the left three fifths.
    const light = measured((x) => [x < 0.6 ? 3 : 0.4 + 0.05 * x, 0.4 + 0.1 * x, 0.4 + 0.1 * x], {
      ceiling: 0.9,
    });
    expect(light.exposure.flatTop).toMatchObject({ channel: 0, percent: 60 });
    expect(light.exposure.flatTop!.level).toBeCloseTo(0.9, 3);
    expect(sentencesOf(light)).toMatch(/60 % of red has one and the same level.*--ceiling (90\.0|89\.9)/);
    const [exposure] = gateLightFindings(light);
    expect(exposure.verdict).toBe('note');
    // Even light of 8 bits with the noise of a camera spreads over more levels.
    const even = measured((x, y) => grey(0.8 - 0.03 * Math.hypot(x, y)), { bits: 8, noise: 0.01 });
    expect(even.exposure.flatTop).toBeUndefined();
    expect(measured(() => grey(3)).exposure.flatTop).toBeUndefined();
  });

  it('takes a light of a few codes for too dark, and not for a camera that ends there', () => {
    const light = measured(() => grey(0.001), { bits: 8 });
    expect(light.exposure.flatTop).toBeDefined();
    const [exposure] = gateLightFindings(light);
    expect(exposure).toMatchObject({ name: 'exposure', verdict: 'fault' });
    expect(exposure.hint).toMatch(/more exposure/);
  });

  it('says so when there is no light', () => {
    const light = measured(() => grey(0));
    expect(sentencesOf(light)).toMatch(/gate is dark/);
    expect(sentencesOf(light)).not.toMatch(/NaN|Infinity|undefined/);
    expect(isReady(gateLightFindings(light))).toBe(false);
  });
});

describe('any still', () => {
  it.each([
    ['one pixel', makePicture(1, 1, { channels: 3, bits: 8 }, Uint8Array.of(200, 190, 180))],
    ['a line', makePicture(500, 1, { channels: 3, bits: 16 }, new Uint16Array(1500).fill(40000))],
    ['grey with alpha', makePicture(20, 10, { channels: 2, bits: 8 }, new Uint8Array(400).fill(128))],
  ])('%s gets an answer in whole numbers and words', (_, still) => {
    const light = measureGateLight(still, signal);
    expect(sentencesOf(light)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('grey is colour with three equal channels', () => {
    const still = makePicture(
      40,
      30,
      { channels: 1, bits: 8 },
      new Uint8Array(1200).map((_, i) => 150 + (i % 40)),
    );
    expect(measureGateLight(still, signal)).toEqual(measureGateLight(expandGrey(still), signal));
  });
});

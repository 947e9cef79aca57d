import { describe, expect, it } from 'vitest';
import {
  type DemoAgeName,
  demoAges,
  demoStills,
  type DemoStillName,
  renderDemoStill,
  wedgeBoxes,
  wedgeSteps,
} from '../../src/demo/index.js';
import { frameLayer } from '../../src/demo/drawing/layer.js';
import { InputError } from '../../src/errors/input-error.js';
import type { Picture } from '../../src/picture/picture.js';

const stills = Object.keys(demoStills) as DemoStillName[];
const ages = Object.keys(demoAges) as DemoAgeName[];
const size = { width: 320, height: 240 } as const;

/** Greys differ by less than this in a step's mean, in 8-bit codes: what the grain of three layers leaves over it. */
const grainInStep = 1;
/** Share of pixels with a channel at an end of the scale. */
const mostClipped = 0.01;

function meanOf({ data, width }: Picture, box: ReturnType<typeof wedgeBoxes>[number]): number[] {
  const sums = [0, 0, 0];
  for (let y = box.y; y < box.y + box.height; y++)
    for (let x = box.x; x < box.x + box.width; x++)
      for (let k = 0; k < 3; k++) sums[k] += data[3 * (y * width + x) + k];
  return sums.map((sum) => sum / (box.width * box.height));
}

const wedgeOf = (picture: Picture) =>
  wedgeBoxes(picture.width, picture.height).map((box) => meanOf(picture, box));

describe.each(stills)('the still "%s"', (name) => {
  const aged = Object.fromEntries(
    ages.map((age) => [age, renderDemoStill(name, { ...size, age })]),
  ) as Record<DemoAgeName, Picture>;
  const good = aged['in-good-order'];

  it('has the size asked for, three channels and 8 bits', () => {
    expect(good).toMatchObject({ ...size, channels: 3, bits: 8 });
    expect(good.data).toBeInstanceOf(Uint8Array);
  });

  it('is the same every time, and in good order unless said otherwise', () => {
    const again = renderDemoStill(name, { ...size }).data;
    expect(again.every((code, i) => code === good.data[i])).toBe(true);
  });

  it('has at 16 bits what it has at 8, finer', () => {
    const { data, bits } = renderDemoStill(name, { ...size, bits: 16 });
    expect(bits).toBe(16);
    expect(data).toBeInstanceOf(Uint16Array);
    let furthest = 0;
    data.forEach((code, i) => (furthest = Math.max(furthest, Math.abs(code / 257 - good.data[i]))));
    // Half an 8-bit code, and half a 16-bit one.
    expect(furthest).toBeLessThanOrEqual(0.5 + 0.5 / 257);
  });

  it('carries a wedge, neutral and in order from clear to black', () => {
    const wedge = wedgeOf(good);
    expect(wedge.length).toBe(wedgeSteps.length);
    for (const [r, g, b] of wedge) expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThan(grainInStep);
    wedge.reduce((lighter, darker) => {
      expect(darker[1]).toBeLessThan(lighter[1]);
      return darker;
    });
    // Density 0.11 and 2.6 of the film, as sRGB codes 227 and 8, and room for grain.
    expect(wedge[0][1]).toBeGreaterThan(220);
    expect(wedge.at(-1)![1]).toBeLessThan(10);
  });

  it.each<[DemoAgeName, (r: number, g: number, b: number) => boolean]>([
    ['warm', (r, g, b) => r > g && g > b],
    ['blue-shifted', (r, g, b) => b > g && g > r],
    ['pink', (r, g, b) => r > 1.1 * g && r > 1.1 * b],
  ])('gone %s, the wedge shifts that way in its middle steps', (age, holds) => {
    for (const [r, g, b] of wedgeOf(aged[age]).slice(3, 8)) expect([holds(r, g, b), r, g, b]).toContain(true);
  });

  it.each(ages)('keeps within the scale, %s', (age) => {
    const { data } = aged[age];
    let clipped = 0;
    for (let i = 0; i < data.length; i += 3) {
      const codes = [...data.subarray(i, i + 3)];
      if (codes.includes(0) || codes.includes(255)) clipped++;
    }
    expect((3 * clipped) / data.length).toBeLessThan(mostClipped);
  });

  it.each([
    [320, 240],
    [256, 144],
    [150, 200],
    [1, 1],
  ])('covers every pixel of %i x %i with light', (width, height) => {
    const frame = frameLayer(width, height);
    demoStills[name].paint(frame);
    for (const cover of frame.cover) expect(cover).toBeCloseTo(1, 3);
    expect(frame.light.every((light) => light > 0 && light < 10)).toBe(true);
  });
});

describe('sizes', () => {
  it('are 960 x 720 unasked', () => {
    expect(renderDemoStill('regatta')).toMatchObject({ width: 960, height: 720, bits: 8 });
  });

  it.each([
    [1, 1],
    [7, 5],
    [64, 3],
  ])('may be as small as %i x %i', (width, height) => {
    expect(renderDemoStill('tram', { width, height }).data.length).toBe(3 * width * height);
  });
});

describe('a still that is not known', () => {
  it('is refused with the right names', () => {
    expect(() => renderDemoStill('regata' as DemoStillName)).toThrow(InputError);
    expect(() => renderDemoStill('regatta', { age: 'pinkish' as DemoAgeName })).toThrow(InputError);
    try {
      renderDemoStill('regata' as DemoStillName);
    } catch (error) {
      expect((error as InputError).problems).toEqual([
        {
          field: 'still',
          what: '"regata" is not known',
          allowed: 'regatta, tram',
          hint: 'Did you mean "regatta"?',
        },
      ]);
    }
  });

  it('a name from the prototype is none', () => {
    expect(() => renderDemoStill('toString' as DemoStillName)).toThrow(InputError);
  });

  it.each([0, -1, 1.5, NaN, Infinity])('a picture %d wide is a fault of the caller', (width) => {
    expect(() => renderDemoStill('regatta', { width, height: 10 })).toThrow(RangeError);
  });
});

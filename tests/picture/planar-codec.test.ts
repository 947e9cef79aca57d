import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { type FrameCoding, frameToGrey, frameToRgb, rgbToFrame } from '../../src/picture/planar-codec.js';
import { planeBytes, type PlaneLayout, planesOf, planeSizes } from '../../src/picture/planes.js';

const base = { kind: 'luma-chroma', bits: 10, siteAcross: 'first', siteDown: 'midway' } as const;
const layouts: PlaneLayout[] = (
  [
    [1, 1],
    [2, 1],
    [2, 2],
  ] as const
).flatMap(([across, down]) =>
  [
    [16, 12],
    [15, 11],
    [1, 1],
  ].flatMap(([width, height]) =>
    (['first', 'midway'] as const).map((site) => ({
      ...{ ...base, width, height, across, down, siteAcross: site, siteDown: site },
    })),
  ),
);
const coding = (layout: PlaneLayout): FrameCoding => ({ layout, matrix: 'bt709', range: 'legal' });

describe('frames in planes', () => {
  it('a half pixel counts as one', () => {
    const odd = { ...base, width: 15, height: 11, across: 2, down: 2 } as const;
    expect(planeSizes(odd)).toEqual([
      [15, 11],
      [8, 6],
      [8, 6],
    ]);
    expect(planeBytes(odd)).toBe(2 * (15 * 11 + 2 * 8 * 6));
    expect(planeBytes({ ...odd, bits: 8, kind: 'grey' })).toBe(15 * 11);
  });

  it.each(layouts)('one colour stays one colour, there and back: %o', (layout) => {
    const bytes = new Uint8Array(planeBytes(layout));
    [500, 400, 600].forEach((code, i) => planesOf(layout, bytes)[i].fill(code));
    const rgb = new Uint16Array(3 * layout.width * layout.height);
    frameToRgb(coding(layout), bytes, rgb);
    expect(new Set(rgb).size).toBe(3);
    const back = new Uint8Array(bytes.length);
    rgbToFrame(coding(layout), rgb, back);
    expect(back).toEqual(bytes);
  });

  it('4:4:4 comes back as it was, code for code', () => {
    const layout = { ...base, width: 32, height: 32, across: 1, down: 1 } as const;
    const bytes = new Uint8Array(planeBytes(layout));
    const random = seededRandom(709);
    // Within what red, green and blue can hold: nothing is cut.
    planesOf(layout, bytes).forEach((plane, i) =>
      plane.forEach((_, at) => (plane[at] = i === 0 ? 420 + 180 * random() : 480 + 64 * random())),
    );
    const rgb = new Uint16Array(3 * 32 * 32);
    frameToRgb(coding(layout), bytes, rgb);
    const back = new Uint8Array(bytes.length);
    rgbToFrame(coding(layout), rgb, back);
    expect(back).toEqual(bytes);
  });

  it('a colour difference on the first pixel is that pixel’s own, and a ramp stays a ramp', () => {
    const layout = { ...base, width: 8, height: 1, across: 2, down: 1 } as const;
    const bytes = new Uint8Array(planeBytes(layout));
    const [luma, cb, cr] = planesOf(layout, bytes);
    luma.fill(500);
    cb.set([512, 532, 552, 572]);
    cr.fill(512);
    const rgb = new Uint16Array(24);
    frameToRgb(coding(layout), bytes, rgb);
    const blues = Array.from({ length: 8 }, (_, x) => rgb[3 * x + 2]);
    const step = (blues[2] - blues[0]) / 2;
    expect(step).toBeGreaterThan(0);
    for (let x = 0; x < 7; x++) expect(Math.abs(blues[x] - blues[0] - step * x)).toBeLessThanOrEqual(1);
    expect(blues[7]).toBe(blues[6]);
  });

  it('codes beyond black and white are cut, and RGB planes lie green, blue, red', () => {
    const layout = { ...base, width: 2, height: 1, across: 1, down: 1 } as const;
    const bytes = new Uint8Array(planeBytes(layout));
    planesOf(layout, bytes)[0].set([0, 1023]);
    for (const plane of planesOf(layout, bytes).slice(1)) plane.fill(512);
    const rgb = new Uint16Array(6);
    frameToRgb(coding(layout), bytes, rgb);
    expect([...rgb]).toEqual([0, 0, 0, 65535, 65535, 65535]);
    frameToGrey(coding(layout), bytes, rgb);
    expect([...rgb.subarray(0, 2)]).toEqual([0, 65535]);
    const planes = { layout: { ...layout, kind: 'rgb' }, matrix: 'bt709', range: 'full' } as const;
    rgbToFrame(planes, Uint16Array.from([65535, 0, 32768, 0, 65535, 1]), bytes);
    expect(planesOf(planes.layout, bytes).map((plane) => [...plane])).toEqual([
      [0, 1023],
      [512, 0],
      [1023, 0],
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { changeDepth, makePicture } from '../../src/picture/picture.js';
import { drawWaveform } from '../../src/picture/waveform.js';
import { pixelsOf, style } from './scopes.js';

const plain = (...codes: number[]) =>
  makePicture(codes.length / 3, 1, { channels: 3, bits: 8 }, Uint8Array.from(codes));

/** Rows of the plot, from the foot, that hold a trace in one colour. */
function litRows(plot: ReturnType<typeof drawWaveform>, channel: 0 | 1 | 2): number[] {
  const lit = pixelsOf(plot).filter((p) => p[2 + channel] > 0 && p[2 + ((channel + 1) % 3)] === 0);
  return [...new Set(lit.map(([, y]) => plot.height - 1 - y))].sort((a, b) => a - b);
}

describe('drawWaveform', () => {
  it('draws an even picture as one line a channel, at its code', () => {
    const plot = drawWaveform(plain(0, 128, 255), { ...style, width: 316, height: 256 });
    expect([litRows(plot, 0), litRows(plot, 1), litRows(plot, 2)]).toEqual([[0], [128], [255]]);
  });

  it('stands the bands beside each other: red, green, blue, with a gap between', () => {
    const plot = drawWaveform(plain(10, 10, 10), { ...style, width: 316, height: 256 });
    const row = pixelsOf(plot).filter(([, y]) => y === 255 - 10);
    const bands = row.map(([, , r, g, b]) =>
      r === 50 && g === 50 ? '-' : r > 0 ? 'r' : g > 0 ? 'g' : b > 0 ? 'b' : '?',
    );
    expect(bands.join('')).toMatch(/^r{100}-{8}g{100}-{8}b{100}$/);
  });

  it('keeps left left: a dark left half and a bright right half', () => {
    const half = Array.from({ length: 40 }, (_, i) => (i < 20 ? 40 : 200)).flatMap((v) => [v, 0, 0]);
    const plot = drawWaveform(plain(...half), { ...style, width: 316, height: 256 });
    const red = pixelsOf(plot).filter(([x, , r, g]) => x < 100 && r > 0 && g === 0);
    expect(red.every(([x, y]) => (x < 50 ? y === 255 - 40 : y === 255 - 200))).toBe(true);
    expect(red).toHaveLength(100);
  });

  it('is brighter where codes crowd', () => {
    const data = Uint8Array.from({ length: 100 }, (_, i) => (i < 90 ? 20 : 120));
    const column = makePicture(1, 100, { channels: 1, bits: 8 }, data);
    const lit = pixelsOf(drawWaveform(column, { ...style, width: 1, height: 256 }));
    const at = (code: number) => lit[255 - code][2];
    expect(at(20)).toBeGreaterThan(at(120));
    expect(at(120)).toBeGreaterThan(0);
  });

  it('draws the same for 8 bits and for the same picture at 16', () => {
    const ramp = plain(...Array.from({ length: 300 }, (_, i) => (i * 7) % 256));
    const size = { ...style, width: 316, height: 256 };
    expect(litRows(drawWaveform(changeDepth(ramp, 16), size), 1)).toEqual(
      litRows(drawWaveform(ramp, size), 1),
    );
  });

  it('gives a grey picture one band, and counts no transparent pixels', () => {
    const grey = makePicture(2, 1, { channels: 2, bits: 8 }, Uint8Array.from([30, 255, 90, 0]));
    const lit = pixelsOf(drawWaveform(grey, { ...style, width: 4, height: 256 })).filter((p) => p[2] > 0);
    expect(lit.map(([x, y]) => [x, 255 - y])).toEqual([
      [0, 30],
      [1, 30],
    ]);
  });

  it('fits any size, even with no room for bands', () => {
    for (const [width, height] of [
      [1, 1],
      [2, 3],
      [95, 1],
      [96, 2],
      [1000, 5],
    ])
      expect(drawWaveform(plain(1, 2, 3), { ...style, width, height })).toMatchObject({
        width,
        height,
        channels: 3,
      });
  });
});

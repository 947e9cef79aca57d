import { describe, expect, it } from 'vitest';
import { palette } from '../../src/preview/palette.js';

type Bytes = readonly [number, number, number];

/** Relative luminance and contrast ratio as WCAG 2.1 (W3C 2018) defines them. */
function luminance(bytes: Bytes): number {
  const [r, g, b] = bytes.map((byte) =>
    byte / 255 <= 0.03928 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: Bytes, b: Bytes): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

describe('palette', () => {
  it('is neutral around the pictures', () => {
    for (const name of ['surround', 'bed', 'scaleLine', 'text', 'quietText', 'comparison'] as const)
      expect(new Set(palette[name]).size).toBe(1);
  });

  it('sets text that can be read: a contrast of at least 4.5 : 1 (WCAG 2.1, 1.4.3)', () => {
    for (const text of [palette.text, palette.quietText])
      expect(contrast(text, palette.surround)).toBeGreaterThan(4.5);
  });

  it('shows traces and marks against what they lie on: at least 3 : 1 (WCAG 2.1, 1.4.11)', () => {
    for (const trace of [palette.red, palette.green, palette.blue, palette.grey])
      expect(contrast(trace, palette.bed)).toBeGreaterThan(3);
    expect(contrast(palette.burntOut, [255, 255, 255])).toBeGreaterThan(3);
    expect(contrast(palette.burntOut, palette.burntOutBed)).toBeGreaterThan(3);
    for (const over of [palette.redOver, palette.greenOver, palette.blueOver])
      expect(contrast(over, palette.burntOutBed)).toBeGreaterThan(4.5);
    for (const under of [palette.red, palette.green, palette.blue])
      expect(contrast(under, palette.blockedBed)).toBeGreaterThan(3);
    expect(contrast(palette.blocked, [0, 0, 0])).toBeGreaterThan(3);
    expect(contrast(palette.blocked, palette.blockedBed)).toBeGreaterThan(3);
  });
});

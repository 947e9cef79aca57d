import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { probeClip } from '../../src/clips/probe.js';
import { readClipStill } from '../../src/clips/read-clip-still.js';
import type { Tools } from '../../src/clips/tools.js';
import {
  barColours,
  bars,
  type BarsKind,
  barsHeight,
  barsWidth,
  barWidth,
  codesIn,
  drawBars,
  tagsOf,
} from './bars.js';
import { encodeClip, type RawFrames } from './tools.js';

/** Planes of 8 bits hold a colour to half a code each; at full weight of both differences that makes less than this. */
const twoCodes = 2 / 255;

const kinds: BarsKind[] = (['420', '422', '444'] as const).flatMap((pattern) =>
  ([8, 10] as const).flatMap((bits) =>
    (['full', 'legal'] as const).flatMap((range) =>
      (['bt601', 'bt709', 'bt2020'] as const).map((matrix) => ({ pattern, bits, range, matrix })),
    ),
  ),
);

function worstOf(found: number[][]): number {
  return Math.max(
    ...found.flatMap((colour, bar) => colour.map((value, c) => Math.abs(value - bars[bar][c]))),
  );
}

/** Bars in every pixel format come back as they were drawn. */
export function barsComeBack(tools: Tools, folder: string): void {
  describe('bars of known codes', () => {
    it.each(kinds)('$pattern, $bits bit, $range, $matrix', async (kind) => {
      const name = Object.values(kind).join('-');
      const path = encodeClip(tools, join(folder, `${name}.mkv`), drawBars(kind), tagsOf(kind));
      const clip = await probeClip(path, {}, tools);
      expect(clip.colour).toMatchObject({ matrix: kind.matrix, range: kind.range, assumed: undefined });
      const { picture } = await readClipStill(clip, { frame: 0 });
      expect(picture).toMatchObject({ channels: 3, bits: 16 });
      expect(worstOf(barColours(picture))).toBeLessThan(twoCodes);
    });

    it.each(['gbrp', 'gbrp10le', 'rgb24', 'rgb48le'])('RGB as it is: %s', async (format) => {
      const drawn = drawRgb(format);
      const codec = format.startsWith('gbrp') || format === 'rgb48le' ? 'ffv1' : 'png';
      const path = encodeClip(tools, join(folder, `${format}.mkv`), drawn, ['-c:v', codec]);
      const clip = await probeClip(path, {}, tools);
      expect(clip.notes).toEqual([]);
      const { picture } = await readClipStill(clip, { frame: 0 });
      expect(worstOf(barColours(picture))).toBeLessThanOrEqual(0.5 / 255);
      expect(clip.colour.range).toBe('full');
    });
  });
}

/** The bars in RGB: planes of green, blue, red, or pixels. */
function drawRgb(format: string): RawFrames {
  const bits = format === 'gbrp10le' ? 10 : format === 'rgb48le' ? 16 : 8;
  const [width, height, pixels] = [barsWidth, barsHeight, barsWidth * barsHeight];
  const code = (pixel: number, channel: number) =>
    Math.round((2 ** bits - 1) * bars[Math.floor((pixel % width) / barWidth)][channel]);
  const bytes = format.startsWith('gbrp')
    ? codesIn(bits, 3 * pixels, (i) => code(i % pixels, [1, 2, 0][Math.floor(i / pixels)]))
    : codesIn(bits, 3 * pixels, (i) => code(Math.floor(i / 3), i % 3));
  return { format, width, height, bytes };
}

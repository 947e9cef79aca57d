import { describe, expect, it } from 'vitest';
import { readFrames } from '../../../src/clips/read-frames.js';
import { barColours, bars, type BarsKind, drawBars, tagsOf } from '../../clips/bars.js';
import { encodeClip, packagedTools } from '../../clips/tools.js';
import { openWorkbench } from './workbench.js';

const { at, gatelight, ffmpeg, facts } = openWorkbench();

/** Lossy encoders of 8 bits, at their finest. */
const fineLoss = 4 / 255;

async function expectBars(path: string, tolerance: number): Promise<void> {
  let frames = 0;
  for await (const { picture } of readFrames(await facts(path))) {
    frames++;
    barColours(picture).forEach((colour, bar) =>
      colour.forEach((value, c) => expect(Math.abs(value - bars[bar][c])).toBeLessThan(tolerance)),
    );
  }
  expect(frames).toBe(1);
}

describe('movies of RGB and of full range through a look', () => {
  const full: BarsKind = { pattern: '422', bits: 10, range: 'full', matrix: 'bt709' };
  encodeClip(packagedTools, at('full.mkv'), drawBars(full), tagsOf(full));
  const legal: BarsKind = { pattern: '444', bits: 10, range: 'legal', matrix: 'bt709' };
  encodeClip(packagedTools, at('444.mkv'), drawBars(legal), tagsOf(legal));
  ffmpeg(
    '-i',
    at('444.mkv'),
    '-vf',
    'scale=in_color_matrix=bt709',
    '-pix_fmt',
    'gbrp10le',
    '-c:v',
    'ffv1',
    at('rgb.mkv'),
  );

  it.each([
    ['RGB stays RGB', 'rgb.mkv', 'ffv1', '-level 3', { kind: 'rgb', range: 'full' }],
    ['an encoder that takes no RGB', 'rgb.mkv', 'libx264', '-crf 1', { kind: 'luma-chroma', range: 'legal' }],
    [
      'RGB, but other pixels are asked for',
      'rgb.mkv',
      'ffv1',
      '-pix_fmt yuv444p',
      { kind: 'luma-chroma', range: 'legal' },
    ],
    [
      'an encoder that takes fewer bits and colours',
      'full.mkv',
      'mpeg4',
      '-qscale 1',
      { kind: 'luma-chroma', range: 'full' },
    ],
  ])('%s: colours come back, and tags say how', async (_, clip, encoder, options, kind) => {
    const output = `${clip}-${encoder}${options.length}.mkv`;
    const how = ['--encoder', encoder, '--encoder-options', options];
    const ended = gatelight(['apply', 'same.cube', clip, '-o', output, ...how]);
    expect(ended.status, ended.stderr).toBe(0);
    const { asked, colour } = await facts(at(output));
    expect({ kind: asked.kind, range: colour.range }).toEqual(kind);
    await expectBars(at(output), fineLoss);
  });

  it('says so where a file cannot say that its range is full', () => {
    const ended = gatelight(['apply', 'same.cube', 'full.mkv', '-o', 'full.mov']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stderr).toMatch(/full\.mov: players will take its range as legal, and it is full/);
    expect(gatelight(['apply', 'same.cube', 'full.mkv', '-o', 'full-out.mkv']).stderr).not.toMatch(/players/);
  });
});

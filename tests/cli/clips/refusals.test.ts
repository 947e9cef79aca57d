import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isRefusal, openWorkbench } from './workbench.js';

const { folder, at, gatelight, ffmpeg, reel, leftovers } = openWorkbench();

describe('a movie that cannot go through a look', () => {
  it('refuses a rate that varies, a clip cut short, and one among stills', () => {
    ffmpeg('-i', reel, '-vf', 'select=mod(n\\,3)', '-vsync', 'vfr', '-c:v', 'ffv1', at('varying.mkv'));
    writeFileSync(at('short.mkv'), readFileSync(reel).subarray(0, statSync(reel).size * 0.6));
    const refusals: [string[], RegExp][] = [
      // 20 frames, the last 28 of 1/25 s after the first: 19 steps in 1.12 s
      [['varying.mkv'], /its frame rate varies.* -vf fps=16\.96\d* /],
      [['short.mkv'], /is cut short/],
      [['reel.mkv', 'bars.png'], /is done in a run of its own/],
    ];
    for (const [names, words] of refusals) {
      const ended = gatelight(['apply', 'same.cube', ...names, '-o', 'never.mkv']);
      expect(isRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toMatch(words);
    }
    expect(readdirSync(folder)).not.toContain('never.mkv');
  });

  it('refuses encoders that this ffmpeg lacks, options that are none, names that say no container', () => {
    const refusals: [string[], RegExp][] = [
      [['--encoder', 'h264'], /has no encoder "h264"\. Did you mean libx264\?/],
      [['--encoder', 'ffv2'], /has no encoder "ffv2"\. Did you mean ffv1\?/],
      [['--encoder', 'libx264', '--encoder-options', 'crf 16'], /"crf" is no name with a dash/],
      [['--encoder-options', '-i other.mkv'], /-i is no option of an encoder/],
      [['--encoder-options', '-shortest bars.mkv'], /-shortest is no option of an encoder/],
      [['--encoder-options', '-g 1 -nostdin bars.mkv'], /-nostdin is no option of an encoder/],
      [['--encoder', 'libx264', '--encoder-options', '-preset nonsense'], /nonsense|encoder/],
    ];
    for (const [options, words] of refusals) {
      const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'never.mkv', ...options]);
      expect(isRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toMatch(words);
    }
    expect(gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'never.txt']).stderr).toMatch(
      /what kind of movie/,
    );
    expect(gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'never.mp4']).stderr).toMatch(
      /FFV1 does not go into a file of this kind\. Name it \.mkv/,
    );
    expect(leftovers()).toEqual([]);
    expect(readdirSync(folder)).not.toContain('never.mkv');
  });

  it('never over a source, nothing without --force', () => {
    for (const output of ['reel.mkv', 'bars.mkv']) {
      const force = output === 'reel.mkv' ? ['--force'] : [];
      const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', output, ...force]);
      expect(isRefusal(ended), ended.stderr).toBe(true);
    }
  });
});

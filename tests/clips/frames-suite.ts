import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cutShort, frameTimes, unsteadyFrame } from '../../src/clips/frame-times.js';
import { probeClip } from '../../src/clips/probe.js';
import { readClipStill } from '../../src/clips/read-clip-still.js';
import { readFrames, type ReadFramesOptions } from '../../src/clips/read-frames.js';
import { numberedFrames, numberIn } from './numbered.js';
import type { Tools } from '../../src/clips/tools.js';
import { encodeClip } from './tools.js';

/** Every frame once, in order, each found by its number and its time; names that could be taken amiss. */
export function framesComeInOrder(tools: Tools, folder: string): void {
  const at = (name: string) => join(folder, name);
  const ffmpeg = (...args: string[]) => execFileSync(tools.ffmpeg, ['-v', 'error', '-y', ...args]);

  const lossless = encodeClip(tools, at('lossless.mkv'), numberedFrames(40));
  // Frames that lean on one another, and come in another order than they are shown in; a rate that is no whole number.
  const leaning = encodeClip(
    tools,
    at('leaning.mp4'),
    numberedFrames(40),
    ['-c:v', 'libx264', '-g', '15', '-bf', '2', '-crf', '0', '-pix_fmt', 'yuv420p'],
    '24000/1001',
  );
  // Every third frame taken out: 24 left, none where a steady rate has it.
  ffmpeg('-i', lossless, '-vf', 'select=mod(n\\,3)', '-vsync', 'vfr', '-c:v', 'ffv1', at('varying.mkv'));
  const varying = at('varying.mkv');

  // The same in other containers, where seeking finds other places; groups that lean on the next; files that do not say when
  // each frame is shown.
  const raw = encodeClip(tools, at('raw.mkv'), numberedFrames(90));
  const x264 = ['-c:v', 'libx264', '-g', '12', '-bf', '2', '-crf', '0', '-pix_fmt', 'yuv420p'];
  const mpeg2 = ['-c:v', 'mpeg2video', '-g', '12', '-bf', '2', '-q:v', '1'];
  const hard: Record<string, string[]> = {
    'transport.m2ts': x264,
    'transport.ts': mpeg2,
    'program.mpg': mpeg2,
    'open.mp4': [...x264, '-x264-params', 'open-gop=1'],
    'timeless.avi': ['-c:v', 'mpeg4', '-g', '12', '-bf', '2', '-q:v', '1'],
  };
  for (const [name, options] of Object.entries(hard)) ffmpeg('-i', raw, ...options, at(name));

  /** One build of ffprobe dies of its own fault at transport streams. */
  const canProbe = (name: string) =>
    spawnSync(tools.ffprobe, ['-v', 'error', at(name)], { stdio: 'ignore' }).signal === null;

  /** Numbers of frames are half a step of luma apart by rounding at most. */
  const toNumber = (data: ArrayLike<number>) => Math.round(numberIn(data));

  async function read(path: string, options: ReadFramesOptions = {}) {
    const frames: { index: number; seconds: number; number: number }[] = [];
    for await (const { index, seconds, picture } of readFrames(await probeClip(path, {}, tools), options))
      frames.push({ index, seconds, number: toNumber(picture.data) });
    return frames;
  }

  const count = (n: number) => Array.from({ length: n }, (_, i) => i);

  describe('frames one after the other', () => {
    it.each([lossless, leaning])('each once, in order: %s', async (path) => {
      const frames = await read(path);
      expect(frames.map(({ index }) => index)).toEqual(count(40));
      expect(frames.map(({ number }) => number)).toEqual(count(40));
      const second = path === lossless ? 1 / 25 : 1001 / 24000;
      frames.forEach(({ seconds, index }) => expect(seconds).toBeCloseTo(index * second, 2));
    });

    it.each([lossless, leaning])('from a frame on, so many, in steps: %s', async (path) => {
      const part = await read(path, { first: 17, count: 5, every: 3 });
      expect(part.map(({ index }) => index)).toEqual([17, 20, 23, 26, 29]);
      expect(part.map(({ number }) => number)).toEqual([17, 20, 23, 26, 29]);
      expect((await read(path, { first: 38 })).map(({ number }) => number)).toEqual([38, 39]);
      expect(await read(path, { first: 40 })).toEqual([]);
    });

    it('a rate that varies: every frame at its own time', async () => {
      const frames = await read(varying);
      const numbers = count(40).filter((n) => n % 3 !== 0);
      expect(frames.map(({ number }) => number)).toEqual(numbers);
      frames.forEach(({ seconds, number }) => expect(seconds).toBeCloseTo((number - 1) / 25, 2));
      const clip = await probeClip(varying, {}, tools);
      expect(unsteadyFrame(await frameTimes(clip), [25, 1])).toBeDefined();
      expect(unsteadyFrame(await frameTimes(await probeClip(lossless, {}, tools)), [25, 1])).toBeUndefined();
    });

    it.each(['lossless', 'leaning', 'varying'])('any one of them by number: %s', async (name) => {
      const path = { lossless, leaning, varying }[name]!;
      const clip = await probeClip(path, {}, tools);
      const all = await read(path);
      for (const frame of [0, 1, 13, 14, 15, 16, all.length - 1])
        expect(toNumber((await readClipStill(clip, { frame })).picture.data)).toBe(all[frame].number);
    });

    it.each(Object.keys(hard).filter(canProbe))(
      'any one of them by number, whatever its container: %s',
      async (name) => {
        const clip = await probeClip(at(name), {}, tools);
        for (const frame of [1, 11, 12, 13, 36, 47, 60, 88, 89])
          expect(toNumber((await readClipStill(clip, { frame })).picture.data)).toBe(frame);
        expect((await read(at(name), { first: 50, count: 2, every: 5 })).map(({ number }) => number)).toEqual(
          [50, 55],
        );
      },
    );

    it('the one that is shown at a time', async () => {
      const clip = await probeClip(varying, {}, tools);
      // Frames 1, 2, 4, 5, ... stand at 0, 40, 120, 160 ms.
      for (const [seconds, number] of [
        [0, 1],
        [0.039, 1],
        [0.04, 2],
        [0.119, 2],
        [0.12, 4],
        [0.13, 4],
      ])
        expect(toNumber((await readClipStill(clip, { seconds })).picture.data)).toBe(number);
    });

    it('luma alone, and smaller', async () => {
      for (const path of [lossless, leaning]) {
        const clip = await probeClip(path, {}, tools);
        const options = { pixels: 'gray16', size: { width: 12, height: 7 }, first: 3, count: 2 } as const;
        for await (const { index, picture } of readFrames(clip, options)) {
          expect(picture).toMatchObject({ channels: 1, bits: 16, width: 12, height: 7 });
          expect(picture.data).toHaveLength(84);
          for (const code of picture.data) expect(numberIn([code])).toBeCloseTo(index, 1);
        }
      }
    });

    it('leaving the loop ends the decoder', async () => {
      const clip = await probeClip(lossless, {}, tools);
      const programs = () => process.getActiveResourcesInfo().filter((kind) => kind === 'ProcessWrap').length;
      for await (const { index } of readFrames(clip)) if (index === 1) break;
      await expect.poll(programs, { timeout: 10_000 }).toBe(0);
    });

    it('a trimmed movie is whole: frames that it holds and does not show are none that it lacks', async () => {
      ffmpeg('-ss', '0.9', '-i', leaning, '-c', 'copy', at('trimmed.mp4'));
      const clip = await probeClip(at('trimmed.mp4'), {}, tools);
      const times = await frameTimes(clip);
      expect(times.hidden).toBeGreaterThan(0);
      expect(cutShort(clip, times)).toBeUndefined();
      expect((await read(at('trimmed.mp4'))).map(({ number }) => number)).toEqual(
        count(40).slice(-times.seconds.length),
      );
    });

    it('a movie whose recorder left frames out is whole, at a rate that varies', async () => {
      const recorder = ['-vf', 'select=mod(n\\,3)', '-vsync', 'vfr', '-c:v', 'mjpeg', '-q:v', '2'];
      ffmpeg('-i', lossless, ...recorder, at('gaps.avi'));
      const clip = await probeClip(at('gaps.avi'), {}, tools);
      const times = await frameTimes(clip);
      expect(clip.statedFrames).toBeGreaterThan(times.seconds.length);
      expect(cutShort(clip, times)).toBeUndefined();
      expect(unsteadyFrame(times, clip.frameRate)).toBeDefined();
      const half = { ...times, seconds: times.seconds.subarray(0, times.seconds.length / 2) };
      expect(cutShort(clip, half)).toMatch(/^is cut short: it states \d+ frames/);
    });

    it('a clip that is cut short gives the frames it has', async () => {
      writeFileSync(at('short.mkv'), readFileSync(lossless).subarray(0, readFileSync(lossless).length * 0.6));
      const frames = await read(at('short.mkv'));
      expect(frames.length).toBeGreaterThan(5);
      expect(frames.length).toBeLessThan(40);
      expect(frames.map(({ number }) => number)).toEqual(count(frames.length));
    });
  });

  describe('names that a shell or a program could take amiss', () => {
    it.each([
      'two words.mkv',
      '-y.mkv',
      'line\nbreak.mkv',
      'at@home.mkv',
      'quo\'te".mkv',
      '$(touch x);.mkv',
      'c:olon%d.mkv',
    ])('%j', async (name) => {
      writeFileSync(at(name), readFileSync(lossless));
      const before = process.cwd();
      process.chdir(folder);
      try {
        const clip = await probeClip(name, {}, tools);
        expect(toNumber((await readClipStill(clip, { frame: 5 })).picture.data)).toBe(5);
      } finally {
        process.chdir(before);
      }
    });
  });
}

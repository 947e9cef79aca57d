import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { probeClip } from '../../../src/clips/probe.js';
import { readFrames } from '../../../src/clips/read-frames.js';
import { drawBars, tagsOf } from '../../clips/bars.js';
import { numberedFrames, numberIn } from '../../clips/numbered.js';
import { encodeClip, packagedEnvironment, packagedTools, temporaryFolder } from '../../clips/tools.js';
import { builtMain, type Ended, isPlainRefusal, projectRoot } from '../gatelight.js';

/** What tests of commands on movies work with, in a folder of their own: two movies, two LUTs, and ways to look at results. */
export function openWorkbench() {
  const folder = temporaryFolder();
  const at = (name: string) => join(folder, name);

  function gatelight(args: readonly string[], more: Record<string, string> = {}): Ended {
    const env = { ...process.env, ...packagedEnvironment, ...more };
    const { status, stdout, stderr } = spawnSync(process.execPath, [builtMain, ...args], {
      cwd: folder,
      env,
      encoding: 'utf8',
    });
    return { status, stdout, stderr };
  }
  const ffmpeg = (...args: string[]) => execFileSync(packagedTools.ffmpeg, ['-v', 'error', '-y', ...args]);
  const facts = (path: string) => probeClip(path, {}, packagedTools);

  /** The LUT that changes nothing, and the look of the tests. */
  const nodes = Array.from({ length: 8 }, (_, i) => `${i & 1} ${(i >> 1) & 1} ${i >> 2}`).join('\n');
  writeFileSync(at('same.cube'), `LUT_3D_SIZE 2\n${nodes}\n`);
  const look = join(projectRoot, 'looks/warm-stock-and-lamp.json');
  gatelight(['build', look, '-o', at('warm.cube'), '--size', '17']);

  /** Frames that each tell their number. */
  const tags = tagsOf({ range: 'legal', matrix: 'bt709' });
  const reel = encodeClip(packagedTools, at('reel.mkv'), numberedFrames(30), tags);
  const kind = { pattern: '422', bits: 10, range: 'legal', matrix: 'bt709' } as const;
  encodeClip(packagedTools, at('bars.mkv'), drawBars(kind), tagsOf(kind));

  async function numbersIn(path: string): Promise<number[]> {
    const numbers: number[] = [];
    for await (const { picture } of readFrames(await facts(path))) numbers.push(numberIn(picture.data));
    return numbers;
  }
  /** Files that were begun and not finished. */
  const leftovers = () => readdirSync(folder).filter((name) => name.endsWith('.part'));

  /** A program in place of ffmpeg: does as it does, but for what is said in words of a shell. */
  function ffmpegThat(
    name: string,
    instead: { encoding?: string; decoding?: string },
  ): Record<string, string> {
    const usual = `exec '${packagedTools.ffmpeg}' "$@"`;
    const { encoding = usual, decoding = usual } = instead;
    const cases = `*pipe:0*) ${encoding};; *rawvideo*) ${decoding};; *) ${usual};;`;
    writeFileSync(at(name), `#!/bin/sh\ncase "$*" in ${cases} esac\n`);
    chmodSync(at(name), 0o755);
    return { GATELIGHT_FFMPEG: at(name) };
  }
  return { folder, at, gatelight, ffmpeg, facts, reel, numbersIn, leftovers, ffmpegThat };
}

/** A plain refusal, after what was noted of LUT and clip. */
export const isRefusal = (ended: Ended): boolean =>
  isPlainRefusal({ ...ended, stderr: ended.stderr.replace(/^note: .*\n/gm, '') });

export function expectNumbers(numbers: readonly number[], expected: readonly number[]): void {
  expect(numbers).toHaveLength(expected.length);
  numbers.forEach((number, i) => expect(number).toBeCloseTo(expected[i], 1));
}

export const count = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

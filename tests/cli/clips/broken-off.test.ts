import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { packagedEnvironment, packagedTools } from '../../clips/tools.js';
import { builtMain } from '../gatelight.js';
import { isRefusal, openWorkbench } from './workbench.js';

const { folder, at, gatelight, leftovers, ffmpegThat } = openWorkbench();

/** In words of a shell: does as it should for some frames of the reel and a part of one. */
const someFrames = `'${packagedTools.ffmpeg}' "$@" | head -c 20001`;

describe.skipIf(process.platform === 'win32')('ffmpeg in the middle of a movie', () => {
  it.each([
    ['an encoder dies', { encoding: 'kill -9 $$' }, /ended by the system or another program/],
    [
      'an encoder fails',
      { encoding: 'head -c 1000 >/dev/null; echo "Conversion failed" >&2; exit 1' },
      /the encoder .*Conversion failed/,
    ],
    [
      'an encoder finds the disk full',
      { encoding: 'echo "av_interleaved_write_frame(): No space left on device" >&2; exit 1' },
      /the disk is full/,
    ],
    [
      'an encoder leaves frames out',
      { encoding: 'cat >/dev/null; echo frame=7; exit 0' },
      /7 of 30 frames were written/,
    ],
    ['a decoder dies', { decoding: `${someFrames}; kill -9 $$` }, /ended by the system or another program/],
    ['a decoder breaks a frame off', { decoding: someFrames }, /reel\.mkv: cannot be decoded/],
  ])('%s: a clear error, nothing half written', (name, instead, words) => {
    const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'never.mkv'], {
      ...ffmpegThat(name.replaceAll(' ', '-'), instead),
    });
    expect(isRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toMatch(words);
    expect(leftovers()).toEqual([]);
    expect(readdirSync(folder)).not.toContain('never.mkv');
  });

  it.each(['SIGINT', 'SIGTERM'] as const)(
    'ended by %s: nothing half written, no program left behind',
    async (signal) => {
      const here = `stopped-${signal}`;
      mkdirSync(at(here));
      // Begins the file, and would begin it again.
      const encoding = `for last; do :; done; while :; do echo >"\${last#file:}"; sleep 0.2; done`;
      const env = {
        ...{ ...process.env, ...packagedEnvironment },
        ...ffmpegThat('ffmpeg-waits', { encoding }),
      };
      const words = ['apply', '../same.cube', '../reel.mkv', '-o', 'never.mkv'];
      const options = { cwd: at(here), env, stdio: 'ignore' } as const;
      const child = spawn(process.execPath, [builtMain, ...words], options);
      const ended = new Promise((done) => child.once('exit', (_, how) => done(how)));
      while (readdirSync(at(here)).length === 0) await setTimeout(100);
      child.kill(signal);
      expect(await ended).toBe(signal);
      expect(readdirSync(at(here))).toEqual([]);
      await setTimeout(1000);
      expect(readdirSync(at(here))).toEqual([]);
    },
  );
});

import { spawnSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { height, width } from '../bench/capture-speed/film.js';
import { record, type Shot } from '../bench/capture-speed/record.js';
import { encodeClip, packagedEnvironment, packagedTools } from '../clips/tools.js';
import { builtMain, type Ended, isPlainRefusal, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();

/** The command line with the packaged programs. */
function speed(args: readonly string[], environment: NodeJS.ProcessEnv = packagedEnvironment): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtMain, 'capture', 'speed', ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, ...environment },
  });
  return { status, stdout, stderr };
}

const shot: Shot = {
  projector: { filmFps: 18.2, blades: 3, openShare: 0.5, edge: 0.15, phase: 0.3 },
  film: { kind: 'leader', seed: 4, grain: 0.02 },
  cameraFps: 25,
  exposureS: 1 / 50,
  seconds: 6,
  noise: 0.01,
  exposureNoise: 0.001,
};

/** The simulated recording as a movie, so many of its frames. */
function movie(name: string, frames = Infinity): string {
  const pictures = [...record(shot)].slice(0, frames);
  const bytes = Uint8Array.from(
    pictures.flatMap(({ light }) =>
      Array.from(light, (value) => Math.round(255 * transferFunctions.srgb.encode(value))),
    ),
  );
  return encodeClip(packagedTools, join(folder, name), { format: 'gray', width, height, bytes });
}
movie('test.mkv');
movie('short.mkv', 30);
writeFileSync(join(folder, 'letters.mkv'), 'no movie at all');
writeFileSync(join(folder, 'there.png'), 'mine');

describe('gatelight capture speed', () => {
  it('tells speed, flicker and what ends it, and draws it', () => {
    const ended = speed(['test.mkv', '--range', 'full', '--shutter', '1/50', '--picture', 'pulse.png']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toMatch(/projector +18\.2\d* fps/);
    expect(ended.stdout).toMatch(/beats at 4\.6 Hz/);
    expect(ended.stdout).toMatch(/trim +run the projector at 16 2\/3 fps/);
    expect(ended.stdout).toMatch(/or expose +1\/54\.6 s/);
    expect(existsSync(join(folder, 'pulse.png'))).toBe(true);
  });

  it('gives figures as JSON, without the curves', () => {
    const ended = speed(['test.mkv', '--range', 'full', '--json']);
    const report = JSON.parse(ended.stdout) as Record<string, unknown> & {
      speed: { filmFps: number; beatHz: number };
    };
    expect(report.speed.filmFps).toBeCloseTo(18.2, 1);
    expect(report.speed.beatHz).toBeCloseTo(4.6, 1);
    expect(Object.keys(report)).not.toContain('light');
    expect(JSON.stringify(report).length).toBeLessThan(4000);
  });

  it.each<[string, string[], string]>([
    ['too few frames', ['short.mkv'], 'has 30 frames'],
    ['what is no movie', ['letters.mkv'], 'letters.mkv'],
    ['a missing file', ['none.mkv'], 'no such file'],
    ['a still', ['there.png'], 'there.png: is one frame, and a whole movie is wanted'],
    [
      'a frame of a movie',
      ['test.mkv@f3'],
      'test.mkv@f3: is one frame, and a whole movie is wanted. Name test.mkv',
    ],
    ['an exposure longer than a frame', ['test.mkv', '--shutter', '1/20'], '--shutter'],
    ['half a blade', ['test.mkv', '--blades', '2.5'], '--blades'],
    ['a speed in words', ['test.mkv', '--film-fps', 'slow'], '--film-fps'],
    ['a picture that exists', ['test.mkv', '--picture', 'there.png'], 'there.png'],
    ['a picture of no known kind', ['test.mkv', '--picture', 'pulse.mkv'], 'pulse.mkv'],
  ])('refuses %s', (_, args, words) => {
    const ended = speed(args);
    const refusal = ended.stderr.replace(/^note: .*\n/gm, '');
    expect(isPlainRefusal({ ...ended, stderr: refusal }), ended.stderr).toBe(true);
    expect(refusal).toContain(words);
  });

  it('says what is missing without ffmpeg', () => {
    const ended = speed(['test.mkv'], { PATH: folder, GATELIGHT_FFMPEG: '', GATELIGHT_FFPROBE: '' });
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toMatch(/ffmpeg/);
  });
});

import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { probeClip } from '../../src/clips/probe.js';
import { readFrames } from '../../src/clips/read-frames.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { readCube } from '../../src/lut/formats/cube/read.js';
import { barColours, bars, drawBars, tagsOf } from '../clips/bars.js';
import { numberedFrames, numberIn } from '../clips/numbered.js';
import { encodeClip, packagedEnvironment, packagedTools, temporaryFolder } from '../clips/tools.js';
import { type Ended, isPlainRefusal, projectRoot } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const main = join(projectRoot, 'dist/src/cli/main.js');

function gatelight(args: readonly string[], more: Record<string, string> = {}): Ended {
  const env = { ...process.env, ...packagedEnvironment, ...more };
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...args], {
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
gatelight([
  'build',
  join(projectRoot, 'looks/warm-stock-and-lamp.json'),
  '-o',
  at('warm.cube'),
  '--size',
  '17',
]);

const reel = encodeClip(
  packagedTools,
  at('reel.mkv'),
  numberedFrames(30),
  tagsOf({ range: 'legal', matrix: 'bt709' }),
);
const kind = { pattern: '422', bits: 10, range: 'legal', matrix: 'bt709' } as const;
encodeClip(packagedTools, at('bars.mkv'), drawBars(kind), tagsOf(kind));

async function numbersIn(path: string): Promise<number[]> {
  const numbers: number[] = [];
  for await (const { picture } of readFrames(await facts(path))) numbers.push(numberIn(picture.data));
  return numbers;
}
const expectNumbers = (numbers: number[], expected: number[]) => {
  expect(numbers).toHaveLength(expected.length);
  numbers.forEach((number, i) => expect(number).toBeCloseTo(expected[i], 1));
};
const count = (n: number) => Array.from({ length: n }, (_, i) => i);
const leftovers = () => readdirSync(folder).filter((name) => name.endsWith('.part'));

/** A plain refusal, after what was noted of LUT and clip. */
const isRefusal = (ended: Ended) =>
  isPlainRefusal({ ...ended, stderr: ended.stderr.replace(/^note: .*\n/gm, '') });

/** A program in place of ffmpeg: does as it does, unless asked to encode. */
function ffmpegThat(name: string, encoding: string): Record<string, string> {
  const script = `#!/bin/sh\ncase "$*" in *pipe:0*) ${encoding};; *) exec '${packagedTools.ffmpeg}' "$@";; esac\n`;
  writeFileSync(at(name), script);
  chmodSync(at(name), 0o755);
  return { GATELIGHT_FFMPEG: at(name) };
}

describe('a frame of a movie as a still', () => {
  it('apply writes it, colours as drawn', async () => {
    expect(gatelight(['apply', 'same.cube', 'bars.mkv@0:00', '-o', 'bars.png']).status).toBe(0);
    const image = sharp(at('bars.png')).toColourspace('rgb16').raw({ depth: 'ushort' });
    const { data, info } = await image.toBuffer({ resolveWithObject: true });
    const codes = new Uint16Array(data.buffer, data.byteOffset, data.length / 2);
    barColours({ ...info, data: codes }).forEach((colour, bar) =>
      colour.forEach((value, c) => expect(Math.abs(value - bars[bar][c])).toBeLessThan(2 / 255)),
    );
  });

  it('apply writes several into a folder, named in the order of the reel', () => {
    const names = ['reel.mkv@f3', 'reel.mkv@f12', 'reel.mkv@0:00.5'];
    const ended = gatelight(['apply', 'same.cube', ...names, '-o', 'frames']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(readdirSync(at('frames')).sort()).toEqual([
      'reel-0-00.5.png',
      'reel-f000003.png',
      'reel-f000012.png',
    ]);
    const again = gatelight(['apply', 'same.cube', 'reel.mkv@f3', 'reel.mkv@f03', '-o', 'never']);
    expect(isRefusal(again), again.stderr).toBe(true);
    expect(again.stderr).toContain('would be written as reel-f000003.png');
  });

  it('preview, capture exposure and measure take it', () => {
    const preview = gatelight(['preview', 'warm.cube', 'bars.mkv@f0', '-o', 'seen.png']);
    expect(preview.status, preview.stderr).toBe(0);
    const exposure = gatelight(['capture', 'exposure', 'reel.mkv@f3', 'reel.mkv@f25', '--json']);
    expect([0, 1]).toContain(exposure.status);
    const measured = gatelight(['measure', 'bars.mkv@f0', '--json']);
    expect((JSON.parse(measured.stdout) as { stills: string[] }).stills).toEqual(['bars.mkv@f0']);
  });

  it('refuses what is past the end, and a movie where a frame is wanted', () => {
    for (const name of ['reel.mkv@f30', 'reel.mkv@2:00', 'reel.mkv', 'gone.mkv@f1']) {
      const ended = gatelight(['preview', 'warm.cube', name, '-o', 'never.png']);
      expect(isRefusal(ended), ended.stderr).toBe(true);
    }
  });

  it('without ffmpeg one line says so, and stills are read as before', () => {
    const nowhere = { GATELIGHT_FFMPEG: '', GATELIGHT_FFPROBE: '', PATH: '/nowhere' };
    const clip = gatelight(['preview', 'warm.cube', 'bars.mkv@f0', '-o', 'never.png'], nowhere);
    expect(isRefusal(clip), clip.stderr).toBe(true);
    expect(clip.stderr).toMatch(/^gatelight: clips need ffmpeg.*Install it/);
    const still = gatelight(['preview', 'warm.cube', 'bars.png', '-o', 'still.png'], nowhere);
    expect(still.status, still.stderr).toBe(0);
  });
});

describe('stills picked from a movie', () => {
  // Black leader, two scenes drawn by ffmpeg, white leader.
  const scene = (tone: string) => ['-f', 'lavfi', '-i', `${tone}s=320x240:r=25:d=1.2`];
  // Its colours are pure: they would be taken as burnt out.
  const paler = 'format=yuv420p,lutyuv=y=val*0.6+30:u=val*0.5+64:v=val*0.5+64';
  const grain = 'noise=alls=6:allf=t,format=yuv420p';
  ffmpeg(
    ...[...scene('color=black:'), ...scene('testsrc2='), ...scene('smptebars='), ...scene('color=white:')],
    ...[
      '-filter_complex',
      `[1]${paler}[1p];[0][1p][2][3]concat=n=4,${grain}`,
      '-c:v',
      'ffv1',
      at('pick.mkv'),
    ],
  );
  const places = (text: string) => [...text.matchAll(/@f(\d+)/g)].map(([, frame]) => Number(frame));

  // Three whole processes, one of which measures: a busy machine takes its time.
  it('no leader; names that can be given back; kept as files', { timeout: 180_000 }, () => {
    const ended = gatelight(['measure', 'pick.mkv', '--stills', '4', '--keep', 'kept', '--json']);
    expect(ended.status, ended.stderr).toBe(0);
    const { stills } = JSON.parse(ended.stdout) as { stills: string[] };
    expect(stills).toHaveLength(4);
    const taken = places(stills.join());
    for (const frame of taken) expect(frame > 30 && frame < 89 && frame !== 59 && frame !== 60).toBe(true);
    expect(taken.some((frame) => frame < 59) && taken.some((frame) => frame > 60)).toBe(true);
    expect(ended.stderr).toMatch(/passed over: .*black.*white/);
    expect(readdirSync(at('kept'))).toEqual(
      taken.map((frame) => `pick-f${String(frame).padStart(6, '0')}.png`),
    );
    expect(gatelight(['measure', ...stills, '--json']).status).toBe(0);
    const again = gatelight(['measure', 'pick.mkv', '--stills', '4', '--keep', 'kept']);
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('already exists');
  });

  it('refuses a movie of leader, and what is no movie', () => {
    ffmpeg(...scene('color=black:'), '-vf', grain, '-c:v', 'ffv1', at('leader.mkv'));
    const refusals: [string[], RegExp][] = [
      [['leader.mkv'], /none of the \d+ frames looked at will do \(\d+ black\)/],
      [['bars.png', '--stills', '3'], /--stills: is for one movie file/],
      [['pick.mkv', 'bars.png'], /is measured in a run of its own/],
    ];
    for (const [words, said] of refusals) {
      const ended = gatelight(['measure', ...words]);
      expect(isRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toMatch(said);
    }
  });
});

describe('a whole movie through a look', () => {
  it('as many frames out as in, each the right one', async () => {
    const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'same.mkv']);
    expect(ended, ended.stderr).toMatchObject({ status: 0, stdout: 'same.mkv: 30 frames, same.cube.\n' });
    expectNumbers(await numbersIn(at('same.mkv')), count(30));
    expect(leftovers()).toEqual([]);
  });

  it('keeps sound, rate, time code and aspect; tags say what the look delivers', async () => {
    const sound = ['-f', 'lavfi', '-i', 'sine=440:duration=1.2', '-c:a', 'pcm_s16le'];
    const tags = tagsOf({ range: 'legal', matrix: 'bt709' });
    const said = ['-timecode', '10:00:00:00', '-aspect', '4:3', '-r', '24000/1001', ...tags];
    ffmpeg('-r', '24000/1001', '-i', reel, ...sound, ...said, '-c:v', 'ffv1', at('sound.mkv'));
    for (const output of ['kept.mkv', 'kept.mov']) {
      const options = output.endsWith('mov') ? ['--encoder', 'mpeg4', '--encoder-options', '-q:v 2'] : [];
      const ended = gatelight(['apply', 'warm.cube', 'sound.mkv', '-o', output, ...options]);
      expect(ended.status, ended.stderr).toBe(0);
      const [before, after] = [await facts(at('sound.mkv')), await facts(at(output))];
      expect(after.frameRate[0] / after.frameRate[1]).toBeCloseTo(24000 / 1001, 3);
      expect(after).toMatchObject({
        soundStreams: 1,
        timeCode: '10:00:00:00',
        sampleAspect: before.sampleAspect,
      });
      // In this container, versions before 4.3 know no number for sRGB.
      const transfer = output.endsWith('mov') ? undefined : 'iec61966-2-1';
      expect(after.colour).toMatchObject({
        primaries: 'bt709',
        transfer,
        matrix: 'bt709',
        range: 'legal',
      });
      const hash = (path: string) => ffmpeg('-i', path, '-map', '0:a', '-f', 'md5', '-').toString();
      expect(hash(at(output))).toBe(hash(at('sound.mkv')));
    }
  });

  it('colours are those of the table, at every bar', async () => {
    expect(gatelight(['apply', 'warm.cube', 'bars.mkv', '-o', 'warm.mkv']).status).toBe(0);
    const expected = Float64Array.from(bars.flat());
    sampleLut(readCube(readFileSync(at('warm.cube')), 'warm.cube').lut)(expected, bars.length);
    for await (const { picture } of readFrames(await facts(at('warm.mkv'))))
      barColours(picture).forEach((colour, bar) =>
        colour.forEach((value, c) => expect(Math.abs(value - expected[3 * bar + c])).toBeLessThan(2 / 255)),
      );
  });

  it('--flip h mirrors, and odd sizes in 4:2:0 pass', async () => {
    expect(gatelight(['apply', 'same.cube', 'bars.mkv', '-o', 'flipped.mkv', '--flip', 'h']).status).toBe(0);
    for await (const { picture } of readFrames(await facts(at('flipped.mkv'))))
      barColours(picture).forEach((colour, bar) =>
        colour.forEach((value, c) =>
          expect(Math.abs(value - bars[bars.length - 1 - bar][c])).toBeLessThan(2 / 255),
        ),
      );
    encodeClip(packagedTools, at('odd.mkv'), numberedFrames(5, { width: 47, height: 31 }));
    const ended = gatelight(['apply', 'same.cube', 'odd.mkv', '-o', 'odd-out.mkv']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(await facts(at('odd-out.mkv'))).toMatchObject({ width: 47, height: 31 });
    expectNumbers(await numbersIn(at('odd-out.mkv')), count(5));
  });

  it('names with blanks, line breaks, @ and a leading dash', async () => {
    for (const name of ['two words.mkv', '-y.mkv', 'line\nbreak.mkv', 'at@f1.mkv']) {
      writeFileSync(at(name), readFileSync(reel));
      const ended = gatelight(['apply', '-o', `out ${name}`, '--', 'same.cube', name]);
      expect(ended.status, ended.stderr).toBe(0);
      expectNumbers(await numbersIn(at(`out ${name}`)), count(30));
    }
  });

  it('refuses a rate that varies, a clip cut short, and one among stills', () => {
    ffmpeg('-i', reel, '-vf', 'select=mod(n\\,3)', '-vsync', 'vfr', '-c:v', 'ffv1', at('varying.mkv'));
    writeFileSync(at('short.mkv'), readFileSync(reel).subarray(0, statSync(reel).size * 0.6));
    const refusals: [string[], RegExp][] = [
      [['varying.mkv'], /its frame rate varies/],
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
      [['--encoder', 'ffv2'], /has no encoder "ffv2"\. Did you mean ffv1\?/],
      [['--encoder', 'libx264', '--encoder-options', 'crf 16'], /"crf" is no name with a dash/],
      [['--encoder-options', '-i other.mkv'], /-i is no option of an encoder/],
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
    for (const output of ['reel.mkv', 'same.mkv']) {
      const force = output === 'reel.mkv' ? ['--force'] : [];
      const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', output, ...force]);
      expect(isRefusal(ended), ended.stderr).toBe(true);
    }
  });

  it.skipIf(process.platform === 'win32').each([
    ['dies', 'kill -9 $$', /ended by the system or another program/],
    [
      'fails',
      'head -c 1000 >/dev/null; echo "Conversion failed" >&2; exit 1',
      /the encoder .*Conversion failed/,
    ],
    [
      'finds the disk full',
      'echo "av_interleaved_write_frame(): No space left on device" >&2; exit 1',
      /the disk is full/,
    ],
    ['leaves frames out', 'cat >/dev/null; echo frame=7; exit 0', /7 of 30 frames were written/],
  ])('an encoder that %s: a clear error, nothing half written', (name, encoding, words) => {
    const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'never.mkv'], {
      ...ffmpegThat(`ffmpeg-${name.replaceAll(' ', '-')}`, encoding),
    });
    expect(isRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toMatch(words);
    expect(leftovers()).toEqual([]);
    expect(readdirSync(folder)).not.toContain('never.mkv');
  });

  it.skipIf(process.platform === 'win32')(
    'interrupted: nothing half written, no program left behind',
    async () => {
      mkdirSync(at('stopped'));
      const env = { ...process.env, ...packagedEnvironment, ...ffmpegThat('ffmpeg-waits', 'exec sleep 30') };
      const child = spawn(
        process.execPath,
        [main, 'apply', '../same.cube', '../reel.mkv', '-o', 'never.mkv'],
        {
          cwd: at('stopped'),
          env,
          stdio: 'ignore',
        },
      );
      const ended = new Promise<NodeJS.Signals | null>((done) =>
        child.once('exit', (_, signal) => done(signal)),
      );
      await new Promise((resolve) => setTimeout(resolve, 3000));
      child.kill('SIGINT');
      expect(await ended).toBe('SIGINT');
      expect(readdirSync(at('stopped'))).toEqual([]);
    },
  );
});

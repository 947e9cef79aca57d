import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { gatelight, isPlainRefusal, builtMain, projectRoot, temporaryFolder } from '../gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const look = at('warm.cube');
gatelight(['build', join(projectRoot, 'looks/warm-stock-and-lamp.json'), '-o', look, '--size', '9']);

const [width, height] = [48, 36];

/** A reel of frames that differ from one another. */
async function makeReel(name: string, count: number, size = { width, height }): Promise<string> {
  mkdirSync(at(name));
  for (let frame = 1; frame <= count; frame++) {
    const codes = Uint16Array.from(
      { length: 3 * size.width * size.height },
      (_, i) => (i * 40503 + 977 * frame) & 65535,
    );
    await sharp(codes, { raw: { ...size, channels: 3 } })
      .toColourspace('rgb16')
      .tiff({ compression: 'none' })
      .toFile(at(`${name}/f${frame}.tif`));
  }
  return at(name);
}

const reel = await makeReel('reel', 12);
const bytesOf = (path: string) =>
  readdirSync(path)
    .sort()
    .map((name) => [name, readFileSync(join(path, name)).toString('base64')]);
const frames = (count: number) => Array.from({ length: count }, (_, i) => `f${i + 1}.tif`).sort();
const apply = (...args: string[]) => gatelight(['apply', look, ...args]);

describe('gatelight apply over frames', () => {
  it('expands a pattern that the shell has not', () => {
    const ended = apply(`${reel}/f1*.tif`, '-o', at('pattern'));
    expect(ended).toMatchObject({ status: 0, stderr: '' });
    expect(readdirSync(at('pattern')).sort()).toEqual(['f1.tif', 'f10.tif', 'f11.tif', 'f12.tif']);
    expect(isPlainRefusal(apply(`${reel}/g*.tif`, '-o', at('none')))).toBe(true);
  });

  it('takes a name with the marks of a pattern as it is, where there is such a file', () => {
    writeFileSync(at('f[1].tif'), readFileSync(join(reel, 'f1.tif')));
    expect(apply(at('f[1].tif'), '-o', at('bracket/')).status).toBe(0);
    expect(readdirSync(at('bracket'))).toEqual(['f[1].tif']);
  });

  it('in parts gives the bytes of one run, and parts follow the numbers', () => {
    apply(reel, '-o', at('whole'));
    for (const part of ['1/5', '2/5', '3/5', '4/5', '5/5'])
      expect(apply(reel, '-o', at('parts'), '--part', part).status).toBe(0);
    expect(bytesOf(at('parts'))).toEqual(bytesOf(at('whole')));
    apply(reel, '-o', at('third'), '--part', '3/5');
    expect(readdirSync(at('third')).sort()).toEqual(['f3.tif', 'f8.tif']);
    expect(apply(reel, '-o', at('beyond'), '--part', '13/20')).toMatchObject({ status: 0, stderr: '' });
  });

  it('refuses to begin where files are in the way', () => {
    const ended = apply(reel, '-o', at('whole'));
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain('holds f1.tif and 11 more already');
    expect(apply(reel, '-o', at('whole'), '--force').status).toBe(0);
  });

  it('resumes: does what is missing, leaves the rest, says when the look is newer', () => {
    apply(reel, '-o', at('resumed'));
    const kept = join(at('resumed'), 'f4.tif');
    writeFileSync(kept, 'finished earlier');
    rmSync(join(at('resumed'), 'f5.tif'));
    utimesSync(kept, 1, 1);
    const ended = apply(reel, '-o', at('resumed'), '--resume');
    expect(ended.status).toBe(0);
    expect(ended.stdout).toContain('1 of 1 frames, 11 were finished before');
    expect(ended.stderr).toContain('newer than 1 of the finished frames');
    expect(readFileSync(kept, 'utf8')).toBe('finished earlier');
    rmSync(kept);
    apply(reel, '-o', at('resumed'), '--resume');
    expect(apply(reel, '-o', at('resumed'), '--resume').stdout).toContain(
      'nothing left to do, all 12 frames were finished before',
    );
    expect(bytesOf(at('resumed'))).toEqual(bytesOf(at('whole')));
  });

  it('never takes its sources for finished frames', () => {
    const ended = apply(reel, '-o', reel, '--resume');
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(isPlainRefusal(apply(reel, '-o', reel, '--force'))).toBe(true);
  });

  it('tells of a broken frame in the middle, does the rest, ends with 1', () => {
    mkdirSync(at('broken'));
    for (const name of frames(12)) writeFileSync(at(`broken/${name}`), readFileSync(join(reel, name)));
    writeFileSync(at('broken/f6.tif'), readFileSync(join(reel, 'f6.tif')).subarray(0, 2000));
    const ended = apply(at('broken'), '-o', at('mended'));
    expect(ended.status).toBe(1);
    expect(ended.stderr.trim().split('\n')).toHaveLength(1);
    expect(ended.stderr).toContain('broken/f6.tif');
    expect(ended.stdout).toContain('11 of 12 frames');
    expect(readdirSync(at('mended')).sort()).toEqual(frames(12).filter((name) => name !== 'f6.tif'));
  });

  it('ends with 1 as well where all that can be done was done before', () => {
    const ended = apply(at('broken'), '-o', at('mended'), '--resume');
    expect(ended.status).toBe(1);
    expect(ended.stdout).toContain('0 of 1 frames, 11 were finished before');
  });

  it('refuses a file, and the name of a file, where many need a folder', () => {
    for (const name of [look, at('graded.tif'), at('graded.mkv')]) {
      const ended = apply(reel, '-o', name);
      expect(isPlainRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toMatch(/12 stills are to be written\. Name a folder with -o/);
    }
    const within = apply(reel, '-o', join(look, 'graded'));
    expect(isPlainRefusal(within), within.stderr).toBe(true);
    expect(apply(join(reel, 'f1.tif'), join(reel, 'f1.tif'), '-o', at('twice')).stderr).toContain(
      'is given twice',
    );
  });

  it('gives the same bytes whatever the number of jobs', () => {
    for (const jobs of ['1', '7']) {
      apply(reel, '-o', at(`jobs-${jobs}`), '--jobs', jobs);
      expect(bytesOf(at(`jobs-${jobs}`))).toEqual(bytesOf(at('whole')));
    }
  });

  // The superuser may write everywhere.
  it.skipIf(process.getuid?.() === 0)('stops at a folder that cannot be written to, told once', () => {
    mkdirSync(at('closed'));
    chmodSync(at('closed'), 0o500);
    const ended = apply(reel, '-o', at('closed'));
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
  });
});

describe('an interrupted run', () => {
  it('dies of the signal, leaves whole frames and nothing else, and is resumed to the same bytes', async () => {
    const long = await makeReel('long', 60, { width: 320, height: 240 });
    const output = at('cut');
    const child = spawn(process.execPath, [builtMain, 'apply', look, long, '-o', output], { stdio: 'pipe' });
    let told = '';
    child.stderr.on('data', (text: Buffer) => (told += text.toString()));
    const finished = () =>
      (readdirSync(folder).includes('cut') ? readdirSync(output) : []).filter(
        (name) => !name.startsWith('.'),
      );
    while (finished().length < 5) await new Promise((resolve) => setTimeout(resolve, 5));
    child.kill('SIGINT');
    expect(await once(child, 'close')).toEqual([null, 'SIGINT']);
    expect(told).toMatch(/Stopped: \d+ of 60 frames done/);
    const left = readdirSync(output);
    expect(left.length).toBeLessThan(60);
    expect(left.filter((name) => !/^f\d+\.tif$/.test(name))).toEqual([]);
    for (const name of left) expect((await sharp(join(output, name)).stats()).channels).toHaveLength(3);
    expect(apply(long, '-o', output, '--resume').status).toBe(0);
    apply(long, '-o', at('uncut'));
    expect(bytesOf(output)).toEqual(bytesOf(at('uncut')));
  });
});

import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { takesManyFrames } from '../../src/cli/second-process.js';
import { builtMain, gatelight, projectRoot, temporaryFolder, whenItEnds } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const look = at('warm.cube');
gatelight(['build', join(projectRoot, 'looks/warm-stock-and-lamp.json'), '-o', look, '--size', '9']);
const { MALLOC_ARENA_MAX: _, ...environment } = process.env;

async function makeReel(name: string, count: number, width: number): Promise<string> {
  mkdirSync(at(name));
  const still = sharp({ create: { width, height: width, channels: 3, background: '#a86' } });
  const bytes = await still.tiff().toBuffer();
  for (let frame = 1; frame <= count; frame++) writeFileSync(at(`${name}/f${frame}.tif`), bytes);
  return at(name);
}

const [short, long] = [await makeReel('short', 3, 32), await makeReel('long', 200, 640)];

describe('what takes many frames', () => {
  it.each([
    [['apply', look, short, '-o', 'out'], true],
    [['apply', look, '"reel/*.tif"', '-o', 'out'], true],
    [['apply', look, ...Array.from({ length: 40 }, (_, i) => `f${i}.tif`), '-o', 'out'], true],
    [['apply', look, join(short, 'f1.tif'), '-o', 'out.tif'], false],
    [['apply', look, 'reel.mkv', '-o', 'out.mkv'], false],
    [['measure', short, '-o', 'reel.json'], false],
    [['apply', '\0'], false],
    [[], false],
  ])('%j', (words, expected) => {
    expect(takesManyFrames(words)).toBe(expected);
  });
});

/** How many processes a command line took. */
function processes(name: string, words: readonly string[], env: NodeJS.ProcessEnv): number {
  const args = ['--import', whenItEnds(at(name), 'process.pid'), builtMain, ...words];
  expect(spawnSync(process.execPath, args, { env }).status).toBe(0);
  return new Set(readFileSync(at(name), 'utf8').trim().split('\n')).size;
}

describe.runIf(process.platform === 'linux')('the second process', () => {
  it('is started for a reel, unless the user has said how memory is dealt with', () => {
    const reel = (out: string) => ['apply', look, short, '-o', at(out)];
    expect(processes('reel', reel('one'), environment)).toBe(2);
    expect(processes('told', reel('two'), { ...environment, MALLOC_ARENA_MAX: '4' })).toBe(1);
    const still = ['apply', look, join(short, 'f1.tif'), '-o', at('one.tif')];
    expect(processes('still', still, environment)).toBe(1);
  });

  it('ends with the first, even where that one is killed, and leaves no half file', async () => {
    const output = at('orphaned');
    const args = [builtMain, 'apply', look, long, '-o', output];
    const first = spawn(process.execPath, args, { env: environment, stdio: ['ignore', 'ignore', 'pipe'] });
    const finished = () =>
      readdirSync(folder).includes('orphaned') ? readdirSync(output).filter((name) => name[0] === 'f') : [];
    while (finished().length < 3) await new Promise((resolve) => setTimeout(resolve, 5));
    first.kill('SIGKILL');
    // Standard error is closed when the last process that holds it has ended.
    expect(await once(first, 'close')).toEqual([null, 'SIGKILL']);
    const left = readdirSync(output);
    expect(left.filter((name) => !/^f\d+\.tif$/.test(name))).toEqual([]);
    expect(left.length).toBeLessThan(200);
    for (const name of left) expect((await sharp(join(output, name)).stats()).channels).toHaveLength(3);
  });
});

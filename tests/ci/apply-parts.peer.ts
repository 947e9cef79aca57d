import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { builtMain, gatelight, projectRoot, temporaryFolder } from '../cli/gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const size = { width: 96, height: 72, channels: 3 } as const;
const frames = 23;
const parts = 5;

async function makeReel(): Promise<void> {
  mkdirSync(at('reel'));
  for (let frame = 1; frame <= frames; frame++) {
    const codes = Uint16Array.from(
      { length: 3 * size.width * size.height },
      (_, i) => (i * 40503 + 977 * frame) & 65535,
    );
    const still = sharp(codes, { raw: size }).toColourspace('rgb16');
    await (frame % 2 === 0
      ? still.png().toFile(at(`reel/f${frame}.png`))
      : still.tiff().toFile(at(`reel/f${frame}.tif`)));
  }
}

const bytesIn = (name: string) =>
  readdirSync(at(name))
    .sort()
    .map((file) => [file, readFileSync(join(at(name), file)).toString('base64')]);

it('a reel spread by GNU parallel gives the bytes of one run', async () => {
  await makeReel();
  gatelight([
    'build',
    join(projectRoot, 'looks/warm-stock-and-lamp.json'),
    '-o',
    at('warm.cube'),
    '--size',
    '17',
  ]);
  const apply = ['apply', 'warm.cube', 'reel/', '-o'];
  expect(gatelight([...apply, 'whole/'], folder).status).toBe(0);
  const command = [process.execPath, builtMain, ...apply, 'graded/', '--resume', '--part', `{}/${parts}`];
  const numbers = Array.from({ length: parts }, (_, i) => `${i + 1}\n`).join('');
  const { status, stderr } = spawnSync('parallel', ['--will-cite', '-j', '3', ...command], {
    cwd: folder,
    input: numbers,
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  expect(readdirSync(at('graded'))).toHaveLength(frames);
  expect(bytesIn('graded')).toEqual(bytesIn('whole'));
});

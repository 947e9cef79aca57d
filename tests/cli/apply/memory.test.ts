import { spawnSync } from 'node:child_process';
import { linkSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { builtMain, gatelight, projectRoot, temporaryFolder, whenItEnds } from '../gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const look = at('warm.cube');
const size = { width: 400, height: 300, channels: 3 } as const;
/** Kilobytes that a process had at most. */
const memoryHeld = 'process.resourceUsage().maxRSS';
const frameBytes = 2 * 3 * size.width * size.height;

/** Most memory of a run over so many frames, bytes: what each of its processes had at most, together. */
function mostMemory(count: number): number {
  mkdirSync(at(`reel-${count}`));
  for (let frame = 1; frame <= count; frame++) linkSync(at('frame.tif'), at(`reel-${count}/f${frame}.tif`));
  const [told, output] = [at(`memory-${count}`), at(`out-${count}`)];
  const words = ['apply', look, at(`reel-${count}`), '-o', output, '--jobs', '2'];
  const ended = spawnSync(process.execPath, ['--import', whenItEnds(told, memoryHeld), builtMain, ...words]);
  expect(ended.status).toBe(0);
  const lines = readFileSync(told, 'utf8').trim().split('\n');
  return 1024 * lines.reduce((sum, line) => sum + Number(line), 0);
}

const [few, many] = [60, 200];

/** A run that kept one buffer of each frame would grow by twice this; the collector lets some lie about for a while. */
const slack = ((many - few) * frameBytes) / 2;

it('a longer reel takes no more memory', { timeout: 120_000 }, async () => {
  gatelight(['build', join(projectRoot, 'looks/warm-stock-and-lamp.json'), '-o', look, '--size', '9']);
  const codes = Uint16Array.from({ length: frameBytes / 2 }, (_, i) => (i * 40503) & 65535);
  await sharp(codes, { raw: size })
    .toColourspace('rgb16')
    .tiff({ compression: 'none' })
    .toFile(at('frame.tif'));
  const [short, long] = [mostMemory(few), mostMemory(many)];
  expect(long - short).toBeLessThan(slack);
});

import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { fromFull, toFull } from '../../src/colour/signal-range.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { lutFormats } from '../../src/lut/formats/index.js';
import type { Run } from '../../src/maths/matrix3.js';
import { losslessLooks } from '../lut/inverse-looks.js';
import { asItIs, drawnScene, type Scene, shoot } from '../burn-in/scene.js';
import { gatelight, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);

const table = sampleLattice(losslessLooks['projected warm'], 17);
writeFileSync(
  at('warm.cube'),
  lutFormats.cube.write(table, {
    title: 'Warm',
    comments: [
      ['takes', 'srgb bt709 full'],
      ['gives', 'srgb bt709 full'],
    ],
  }),
);
writeFileSync(at('soft.cube'), lutFormats.cube.write(sampleLattice(losslessLooks.soft, 17)));
const look = sampleLut(table);
const scene = drawnScene(3);
const size = { width: 192, height: 144, noise: 0.6, dx: 0, dy: 0 } as const;

async function still(name: string, device: Run, shot: object = {}, of: Scene = scene): Promise<string> {
  const { width, height, data, channels } = shoot(of, device, { ...size, bits: 8, seed: 1, ...shot });
  await sharp(data, { raw: { width, height, channels } }).toFile(at(name));
  return at(name);
}
const plain = await still('plain.png', asItIs);
const good = await still('good.png', look, { seed: 2, dx: 1.5, dy: -0.25 });
const bare = await still('bare.png', asItIs, { seed: 3 });
const pixel = await still('pixel.png', asItIs, { width: 1, height: 1 });
const narrow = await still('narrow.png', look, { width: 191 });
const elsewhere = await still('elsewhere.png', look, { seed: 7 }, drawnScene(40));
copyFileSync(plain, at('copy.png'));
writeFileSync(at('text.png'), 'this is no picture');
const warm = at('warm.cube');

interface Said {
  readonly holds: boolean;
  readonly cause: { readonly name: string; readonly words: string } | null;
  readonly shift: { readonly dx: number; readonly dy: number };
  readonly tried: readonly object[];
  readonly doubts: readonly string[];
}
const said = (args: readonly string[]) => JSON.parse(gatelight(['verify', ...args, '--json']).stdout) as Said;

describe('gatelight verify', () => {
  it('says in plain words that a device did what the file says', () => {
    const ended = gatelight(['verify', plain, good, warm]);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toMatch(
      /^The device did what the file says: mean 0\.\d\d, 95th percentile 0\.\d\d CIEDE2000\.\n/,
    );
    expect(ended.stdout).toMatch(/lies 1\.[45]\d pixels to the left and 0\.[23]\d pixels down/);
    expect(ended.stdout).toMatch(/\ngood\n$/);
  });

  it('names the cause, how much better it fits, and what to do, with exit code 1', () => {
    const ended = gatelight(['verify', plain, bare, warm]);
    expect(ended.status, ended.stderr).toBe(1);
    expect(ended.stdout).toMatch(/Why: the look was not applied: /);
    expect(ended.stdout).toMatch(/lies (more than )?\d+ times as far off/);
    expect(ended.stdout).toMatch(/What to do: Load the file/);
    expect(ended.stdout).toMatch(/\nNOT GOOD\n$/);
  });

  it('gives the same as JSON', () => {
    const { holds, cause, shift, tried, doubts } = said([plain, bare, warm]);
    expect([holds, cause?.name, doubts]).toEqual([false, 'not-applied', []]);
    expect(Math.hypot(shift.dx, shift.dy)).toBeLessThan(0.1);
    expect(tried.length).toBeGreaterThan(8);
    expect(said([plain, good, warm]).cause).toBeNull();
  });

  it('finds the other file that was loaded', async () => {
    const other = await still('other.png', losslessLooks.soft, { seed: 4 });
    const { cause } = said([plain, other, warm, '--other', at('soft.cube')]);
    expect(cause?.name).toBe('another-file');
    expect(cause?.words).toContain(at('soft.cube'));
  });

  it('shows where it differs', async () => {
    const ended = gatelight(['verify', plain, bare, warm, '--picture', at('seen.png')]);
    expect(ended.stdout).toContain(`See ${at('seen.png')}.`);
    expect((await sharp(at('seen.png')).metadata()).width).toBe(1600);
    const again = gatelight(['verify', plain, bare, warm, '--picture', at('seen.png')]);
    expect([again.status, again.stdout]).toEqual([2, '']);
    expect(again.stderr).toMatch(/already exists/);
  });

  it('takes 16 bits, alpha and JPEG', async () => {
    const { width, height, data } = shoot(scene, look, { ...size, bits: 16, seed: 5 });
    const deep = sharp(data as Uint16Array, { raw: { width, height, channels: 3 } });
    await deep.toColourspace('rgb16').png().toFile(at('deep.png'));
    expect(said([plain, at('deep.png'), warm])).toMatchObject({ holds: true, cause: null });
    await sharp(good).ensureAlpha().png().toFile(at('alpha.png'));
    await sharp(good).jpeg({ quality: 92, chromaSubsampling: '4:4:4' }).toFile(at('good.jpg'));
    for (const name of ['alpha.png', 'good.jpg'])
      expect(said([plain, at(name), warm]), name).toMatchObject({ holds: true, cause: null });
  });

  it('takes legal range as the file says it', async () => {
    const each =
      (change: (code: number) => number): Run =>
      (values, count) => {
        for (let i = 0; i < 3 * count; i++) values[i] = change(values[i]);
      };
    const [off, on] = [each((code) => toFull(code)), each((code) => fromFull(code))];
    const legalLook: Run = (values, count) => [off, look, on].forEach((run) => run(values, count));
    const comments = [
      ['takes', 'srgb bt709 legal'],
      ['gives', 'srgb bt709 legal'],
    ] as const;
    writeFileSync(at('legal.cube'), lutFormats.cube.write(sampleLattice(legalLook, 33), { comments }));
    const legalScene: Scene = (x, y) => {
      const [r, g, b] = scene(x, y);
      return [fromFull(r), fromFull(g), fromFull(b)];
    };
    const before = await still('legal-plain.png', asItIs, {}, legalScene);
    const after = await still('legal-burnt.png', legalLook, { seed: 8 }, legalScene);
    expect(said([before, after, at('legal.cube')])).toMatchObject({ holds: true, cause: null });
  });

  it('a grey still through a look that colours it', async () => {
    const greyScene: Scene = (x, y) => {
      const [, g] = scene(x, y);
      return [g, g, g];
    };
    const colour = await still('grey.png', asItIs, {}, greyScene);
    await sharp(colour).toColourspace('b-w').png().toFile(at('one-channel.png'));
    const burnt = await still('grey-burnt.png', look, { seed: 6 }, greyScene);
    expect(said([at('one-channel.png'), burnt, warm])).toMatchObject({ holds: true, cause: null });
  });

  it('leaves the stills and the LUT as they are', () => {
    const before = [plain, good, warm].map((path) => readFileSync(path));
    for (const path of [plain, good, warm])
      expect(gatelight(['verify', plain, good, warm, '--picture', path, '--force']).status).toBe(2);
    [plain, good, warm].forEach((path, i) => expect(readFileSync(path).equals(before[i])).toBe(true));
  });

  it.each([
    ['stills of two sizes', [plain, narrow, warm], /differ in size: 192 x 144 and 191 x 144/],
    ['stills of one pixel', [pixel, at('copy-of-pixel.png'), warm], /too small/],
    ['one still twice', [plain, plain, warm], /given twice/],
    ['two frames', [plain, elsewhere, warm], /do not show the same frame/],
    ['a missing still', [plain, at('none.png'), warm], /none\.png/],
    ['text named .png', [plain, at('text.png'), warm], /text\.png/],
    ['a still for a look', [plain, good, bare], /bare\.png/],
    ['a picture of another kind', [plain, good, warm, '--picture', at('x.gif')], /x\.gif/],
  ])('refuses %s in plain words', (_, args, words) => {
    copyFileSync(pixel, at('copy-of-pixel.png'));
    const ended = gatelight(['verify', ...args]);
    expect([ended.status, ended.stdout]).toEqual([2, '']);
    expect(ended.stderr).toMatch(words);
    expect(ended.stderr).not.toMatch(/\n\s+at /);
    expect(existsSync(at('x.gif'))).toBe(false);
  });

  it('a copy of the plain still is a still that the look was not applied to', () => {
    expect(said([plain, at('copy.png'), warm])).toMatchObject({
      holds: false,
      cause: { name: 'not-applied' },
    });
  });
});

import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const look = (name: string) => join(projectRoot, 'looks', `${name}.json`);

/** A ramp of greys with a coloured corner, written as PNG. */
async function writeStill(name: string, width: number, height: number): Promise<string> {
  const data = Uint8Array.from({ length: 3 * width * height }, (_, i) =>
    Math.round((255 * (Math.floor(i / 3) % width)) / Math.max(1, width - 1)),
  );
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(at(name));
  return at(name);
}
const still = await writeStill('ramp.png', 320, 200);
const pixel = await writeStill('pixel.png', 1, 1);
writeFileSync(at('identity.json'), JSON.stringify({ name: 'Nothing asked' }));

const pixels = async (path: string) =>
  await sharp(path).removeAlpha().raw().toBuffer({ resolveWithObject: true });

describe('gatelight preview', () => {
  it('writes one picture and says what is newly lost', async () => {
    const ended = gatelight(['preview', look('warm-stock-and-lamp'), still, '-o', at('seen.png')]);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toMatch(/seen\.png: .*newly burnt out, .*newly blocked\.\n$/);
    const { width, format } = await sharp(at('seen.png')).metadata();
    expect([width, format]).toEqual([1600, 'png']);
  });

  it('gives its figures as JSON', () => {
    const ended = gatelight(['preview', look('pink-reel'), still, '-o', at('figures.png'), '--json']);
    const figures = JSON.parse(ended.stdout) as { before: { median: number }[]; newlyLost: object };
    expect(figures.before[0].median).toBeCloseTo(50, 0);
    expect(figures.newlyLost).toHaveProperty('burntOutPercent');
  });

  it('mirrors first: a ramp flipped left-right is another picture', async () => {
    gatelight(['preview', look('xenon-hall'), still, '-o', at('plain.png')]);
    gatelight(['preview', look('xenon-hall'), still, '-o', at('flipped.png'), '--flip', 'h']);
    expect((await pixels(at('plain.png'))).data.equals((await pixels(at('flipped.png'))).data)).toBe(false);
  });

  it('shows the same colours whatever the delivery encoding', async () => {
    const delivered = (delivery: object, name: string) => {
      writeFileSync(
        at(`${name}.json`),
        JSON.stringify({ name: 'x', print: { exposureStops: -0.5 }, delivery }),
      );
      const ended = gatelight(['preview', at(`${name}.json`), still, '-o', at(`${name}.png`)]);
      expect(ended.status, ended.stderr).toBe(0);
    };
    delivered({}, 'screen');
    delivered({ encoding: 'hlg', primaries: 'bt2020', range: 'legal' }, 'hlg');
    const [screen, hlg] = [await pixels(at('screen.png')), await pixels(at('hlg.png'))];
    // The picture after: right half, below the label strip; the scopes below show device codes and may differ.
    const [x, y] = [1000, 150];
    const at3 = (x0: number) => 3 * (y * screen.info.width + x0);
    for (let dx = 0; dx < 400; dx += 20)
      for (let c = 0; c < 3; c++)
        expect(Math.abs(screen.data[at3(x + dx) + c] - hlg.data[at3(x + dx) + c])).toBeLessThanOrEqual(2);
  });

  it('takes a still of one pixel', () => {
    expect(gatelight(['preview', at('identity.json'), pixel, '-o', at('one.png')]).status).toBe(0);
  });

  mkdirSync(at('folder'));
  writeFileSync(at('text.png'), 'this is no picture');
  writeFileSync(at('empty.png'), '');
  it.each([
    ['a missing still', at('none.png'), 'none.png'],
    ['a folder', at('folder'), 'folder'],
    ['text named .png', at('text.png'), 'text.png'],
    ['an empty file', at('empty.png'), 'empty.png'],
  ])('refuses %s in plain words', (_, path, words) => {
    const ended = gatelight(['preview', at('identity.json'), path, '-o', at('never.png')]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain(words);
    expect(readdirSync(folder)).not.toContain('never.png');
  });
});

import { join } from 'node:path';
import { statfsSync, writeFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { encodeStill } from '../../src/stills/write-still.js';
import { grey, makeStill, type StillMaking } from '../capture/stills.js';
import { gatelight, isPlainRefusal, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);

/** A wedge from light 0.01 to 0.5, so many stops brighter. */
async function write(name: string, stops: number, making: StillMaking = {}): Promise<string> {
  const picture = makeStill((x) => grey(2 ** stops * 0.01 * 50 ** (Math.floor(8 * x) / 7)), making);
  writeFileSync(at(name), (await encodeStill(name, picture)).bytes);
  return at(name);
}
const low = await write('low.png', -2, { noise: 0.04, seed: 1 });
const right = await write('right.png', 0, { noise: 0.02, seed: 2 });
const high = await write('high.png', 2, { noise: 0.01, seed: 3 });
const small = await write('small.png', 0, { width: 64, height: 48 });

describe('gatelight capture', () => {
  it('prints the sheet, with and without its name', () => {
    const given = ['--gauge', 'super8', '--feet', '50'];
    const plain = gatelight(['capture', ...given]);
    expect(plain.status, plain.stderr).toBe(0);
    // 50 feet of Super 8 are 3600 frames, 3:20 at 18 fps (arithmetic).
    expect(plain.stdout).toMatch(/3600 frames/);
    expect(plain.stdout).toMatch(/running time +3:20/);
    expect(gatelight(['capture', 'sheet', ...given]).stdout).toBe(plain.stdout);
  });

  it('looks up the free space of the disk that the recording goes to', () => {
    const ended = gatelight(['capture', '--gauge', '8mm', '--feet', '25', '--disk', folder, '--json']);
    const { storage } = JSON.parse(ended.stdout) as { storage: { disk: { freeGb: number } } };
    const { bavail, bsize } = statfsSync(folder);
    // Others write to the disk meanwhile: within a tenth.
    expect(Math.abs((storage.disk.freeGb * 1e9) / (bavail * bsize) - 1)).toBeLessThan(0.1);
  });

  it('gives the sheet as JSON', () => {
    const ended = gatelight([
      'capture',
      '--gauge',
      '16mm',
      '--metres',
      '30.48',
      '--film-fps',
      '16 2/3',
      '--json',
    ]);
    const sheet = JSON.parse(ended.stdout) as { film: { frames: number }; asItRuns: { flickerHz: number } };
    expect(sheet.film.frames).toBe(4000);
    expect(sheet.asItRuns.flickerHz).toBeCloseTo(50, 9);
  });

  it.each([
    [['--gauge', 'supr8', '--feet', '5'], 'Did you mean "super8"?'],
    [['--gauge', 'super8'], '--feet: the length of the reel is needed once'],
    [['--gauge', 'super8', '--feet', '5', '--blades', '2.5'], '--blades: 2.5 cannot be used'],
    [['--gauge', 'super8', '--feet', '5', '--camera-fps', 'fast'], '--camera-fps: "fast"'],
    [['--gauge', 'super8', '--feet', '5', '--resolution', 'large'], '--resolution: "large"'],
    [['--gauge', 'super8', '--feet', 'NaN'], '--feet: "NaN"'],
    [
      ['--gauge', 'super8', '--feet', '-5'],
      '--feet: -5 cannot be used. Allowed: a number from 0.1 to 20000.',
    ],
    [['--gauge', 'super8', '--feet', '1e9'], 'Allowed: a number from 0.1 to 20000.'],
    [['--gauge', 'super8', '--feet', '49,2'], 'Allowed: a number. Write a point for the comma.'],
    [
      ['--gauge', 'super8', '--feet', '5', '--disk', 'no/such/folder'],
      'no/such/folder: no such file or folder',
    ],
    [['--gauge', 'super8', '--feet', '5', '--disk', '.', '--free-gb', '5'], 'cannot be used with'],
  ])('refuses %j by the name of the option', (given, words) => {
    const ended = gatelight(['capture', ...given]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain(words);
  });
});

describe('gatelight capture exposure', () => {
  it('says which still to take', () => {
    const ended = gatelight(['capture', 'exposure', low, right, high]);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toMatch(/Take .*right\.png\. It keeps its highlights/);
    expect(ended.stdout).toMatch(/\n> .*right\.png|\n> \S*\.\.\./);
  });

  it('draws the stills beside each other, and replaces nothing unasked', async () => {
    const given = ['capture', 'exposure', low, right, high, '--picture', at('seen.png')];
    const ended = gatelight(given);
    expect(ended.stdout).toContain('seen.png: the same as a picture.');
    expect((await sharp(at('seen.png')).metadata()).width).toBe(1600);
    expect(isPlainRefusal(gatelight(given))).toBe(true);
    expect(gatelight([...given, '--force']).status).toBe(ended.status);
  });

  it('gives figures as JSON: exposures, clipping, noise', () => {
    const ended = gatelight(['capture', 'exposure', right, low, high, '--json']);
    const { stills, take } = JSON.parse(ended.stdout) as {
      take: number;
      stills: { exposureStops: number; burntOutPercent: number[]; shadowNoisePercent: number[] }[];
    };
    expect(take).toBe(0);
    expect(stills.map(({ exposureStops }) => Math.round(10 * exposureStops) / 10)).toEqual([0, -2, 2]);
    // Of eight equal steps up to light 2, those at and above 1 are burnt out: the last two (1.14 and 2).
    expect(stills[2].burntOutPercent[0]).toBeCloseTo(25, 0);
    expect(stills[0].shadowNoisePercent[1]).toBeCloseTo(2, 0);
  });

  it('tells of a still that is given twice, and says what it says without', () => {
    const [twice, once] = [
      [low, right, right],
      [low, right],
    ].map((given) => gatelight(['capture', 'exposure', ...given]));
    expect(twice.stderr).toMatch(/right\.png: is the same picture as one before: it tells nothing more\./);
    expect(once.stderr).not.toMatch(/same picture/);
    const advice = ({ stdout }: typeof once) => /Take .*right\.png\. It keeps/.exec(stdout)?.[0];
    expect(advice(twice)).toBe(advice(once));
    expect(twice.status).toBe(once.status);
  });

  it('ends with 1 where none can be taken', () => {
    const ended = gatelight(['capture', 'exposure', high]);
    expect(ended.status).toBe(1);
    expect(ended.stdout).toMatch(/Take none of these/);
  });

  it.each([
    ['stills of two sizes', [right, small], 'pixels'],
    ['an area outside', [right, '--area', '300,0,50,50'], 'reaches outside of'],
    ['an area without width', [right, '--area', '3,0,0,50'], 'is empty'],
    ['a ceiling in words', [right, '--ceiling', 'high'], '--ceiling: "high"'],
    ['a missing still', [at('none.png')], 'none.png'],
  ])('refuses %s', (_, given, words) => {
    const ended = gatelight(['capture', 'exposure', ...given]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain(words);
  });
});

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { colourTemperatureRows } from '../../shared/check-values/lights.js';
import { xyzOfXy } from '../../src/colour/chromaticity.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { demoAges, renderDemoStill } from '../../src/demo/index.js';
import { invert3, transform3, type Triple } from '../../src/maths/matrix3.js';
import type { Picture } from '../../src/picture/picture.js';
import { encodeStill } from '../../src/stills/write-still.js';
import { grey, makeStill } from '../capture/stills.js';
import { gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const write = async (name: string, picture: Picture) => {
  writeFileSync(at(name), (await encodeStill(name, picture)).bytes);
  return at(name);
};
const size = { width: 240, height: 180 };
const regatta = await write('regatta.png', renderDemoStill('regatta', { ...size, age: 'pink' }));
const tram = await write('tram.png', renderDemoStill('tram', { ...size, age: 'pink' }));

describe('gatelight measure', () => {
  it('writes a look that builds, and a report', async () => {
    const ended = gatelight(['measure', regatta, tram, '-o', at('reel.json'), '--report', at('reel.png')]);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toMatch(/cyan dye +\d+ % lost \(\d+ to \d+\)/);
    expect(ended.stdout).toMatch(/The evidence is/);
    expect((await sharp(at('reel.png')).metadata()).width).toBe(1600);
    const built = gatelight(['build', at('reel.json'), '-o', at('reel.cube'), '--size', '9']);
    expect(built.status, built.stderr).toBe(0);
  });

  it('finds the dye that the film lost most of, as JSON', () => {
    const ended = gatelight(['measure', regatta, tram, '--json']);
    const { loss } = JSON.parse(ended.stdout) as { loss: Record<string, number> };
    expect(Math.max(...Object.values(loss))).toBe(loss.cyan);
    // Effective losses under generic dyes: within 0.2 of what the model was faded by.
    expect(Math.abs(loss.cyan - demoAges.pink.loss.cyan)).toBeLessThan(0.2);
  });

  it('measures past a still without colour, and tells which', async () => {
    const title = await write(
      'title.png',
      makeStill(() => grey(0.3)),
    );
    const ended = gatelight(['measure', title, regatta, '--json']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stderr).toMatch(
      /^note: .*title\.png: has no colour, so it tells nothing of dyes: it was not used\.\n$/,
    );
    const { unused } = JSON.parse(ended.stdout) as { unused: { name: string }[] };
    expect(unused.map(({ name }) => name)).toEqual([title]);
    expect(isPlainRefusal(gatelight(['measure', title]))).toBe(true);
  });

  it('keeps a look to be like, its lamp file named from where the new look lies', () => {
    mkdirSync(at('looks'), { recursive: true });
    const lamp = Array.from({ length: 41 }, (_, i) => `${380 + 10 * i}, ${1 + i / 40}`).join('\n');
    writeFileSync(at('looks/lamp.csv'), lamp);
    const fields = { name: 'Hall', note: 'Ours.', projector: { lamp: { file: 'lamp.csv' } } };
    writeFileSync(at('looks/hall.json'), JSON.stringify(fields));
    const ended = gatelight([
      'measure',
      regatta,
      '--like',
      at('looks/hall.json'),
      '-o',
      at('hall-reel.json'),
    ]);
    expect(ended.status, ended.stderr).toBe(0);
    const written = JSON.parse(readFileSync(at('hall-reel.json'), 'utf8')) as typeof fields;
    expect([written.name, written.projector.lamp.file]).toEqual([
      'Hall, measured from regatta.png',
      'looks/lamp.csv',
    ]);
    const built = gatelight(['build', at('hall-reel.json'), '-o', at('hall.cube'), '--size', '5']);
    expect(built.status, built.stderr).toBe(0);
  });

  it('says what stills are taken as, where a look says that they are no ordinary pictures', () => {
    const like = join(projectRoot, 'looks/warm-lamp-for-hlg.json');
    const ended = gatelight(['measure', regatta, '--like', like]);
    expect(ended.stderr).toContain('warm-lamp-for-hlg.json: stills are taken as HLG, BT.2020, legal, as its');
    expect(gatelight(['measure', regatta]).stderr).toBe('');
  });

  it('replaces nothing unasked, and a source never', () => {
    writeFileSync(at('taken.json'), 'mine');
    const ended = gatelight(['measure', regatta, '-o', at('taken.json')]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(readFileSync(at('taken.json'), 'utf8')).toBe('mine');
    const over = gatelight(['measure', regatta, '--report', regatta, '--force']);
    expect(over.stderr).toContain('is one of the sources');
  });

  it.each([
    ['no still', [], 'no still was given'],
    ['a still given twice', [regatta, tram, regatta], 'is the same picture as one before'],
    ['a rectangle outside', [regatta, '--black', '200,0,50,10'], 'reaches outside of'],
    ['a still that was not given', [regatta, '--neutral', '3:1,1,5,5'], 'there is no still 3: one was given'],
    ['still 0', [regatta, '--neutral', '0:1,1,5,5'], 'stills are counted from 1'],
    ['words for a rectangle', [regatta, '--clear', 'top left'], 'is not a rectangle of whole numbers'],
    ['three numbers', [regatta, '--clear', '1,2,3'], 'is not a rectangle of whole numbers'],
    ['a mark one pixel wide', [regatta, '--black', '10,2,1,5'], '--black 10,2,1,5: is too small'],
    ['an empty rectangle', [regatta, '--film', '1,2,0,5'], 'is empty'],
    ['an open gate of 0', [regatta, '--open-gate', '0'], '--open-gate: "0"'],
    ['a look named .cube', [regatta, '-o', at('x.cube')], 'a look file is named .json'],
    ['a report named .gif', [regatta, '--report', at('x.gif')], 'not a format for stills'],
    ['a kelvin for a reel', [regatta, '--white-balance', '3200'], 'is for the open gate only'],
    ['a reel beside the light', [regatta, '--light', tram], 'takes one still'],
    ['a stock unknown', [regatta, '--stock', 'attic'], 'Allowed: auto'],
  ])('refuses %s in plain words and writes nothing', (_, given, words) => {
    const ended = gatelight(['measure', ...given]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain(words);
    expect(existsSync(at('x.cube')) || existsSync(at('x.gif'))).toBe(false);
  });
});

describe('gatelight measure --light', () => {
  it('reads illuminant A back', async () => {
    const [{ xy, kelvin }] = colourTemperatureRows;
    const rgb = transform3(invert3(rgbToXyz(primaries.bt709)), xyzOfXy(xy));
    const white: Triple = [(0.8 * rgb[0]) / rgb[0], (0.8 * rgb[1]) / rgb[0], (0.8 * rgb[2]) / rgb[0]];
    const path = await write(
      'a.png',
      makeStill(() => white),
    );
    const ended = gatelight(['measure', '--light', path, '--json']);
    expect(ended.status).toBe(1);
    const { balance } = JSON.parse(ended.stdout) as { balance: { kelvin: number } };
    // 16-bit codes, and a locus summed at 5 nm against the published 1 nm: a fraction of a kelvin here.
    expect(Math.abs(balance.kelvin - kelvin)).toBeLessThan(1);
    expect(gatelight(['measure', '--light', path]).stdout).toMatch(
      /too warm \(red\)[^]*turn the lamp cooler/,
    );
  });

  it('draws what it found, replaces nothing unasked, and its JSON leaves the map out', async () => {
    const path = await write(
      'gate.png',
      makeStill((x) => grey(0.8 - 0.3 * x)),
    );
    const given = ['measure', '--light', path, '--report', at('gate-seen.png')];
    const ended = gatelight(given);
    expect(ended.stdout).toContain('gate-seen.png: the same as a picture.');
    expect((await sharp(at('gate-seen.png')).metadata()).width).toBe(1600);
    expect(isPlainRefusal(gatelight(given))).toBe(true);
    expect(gatelight(['measure', '--light', path, '--report', path, '--force']).stderr).toContain(
      'is one of the sources',
    );
    const { evenness } = JSON.parse(gatelight([...given, '--force', '--json']).stdout) as {
      evenness: { spreadStops: number; map?: unknown };
    };
    expect(evenness.spreadStops).toBeGreaterThan(0.4);
    expect(evenness.map).toBeUndefined();
  });

  it('finds an even, neutral light ready', async () => {
    const ended = gatelight([
      'measure',
      '--light',
      await write(
        'even.png',
        makeStill((x) => grey(0.8 - 0.02 * x)),
      ),
    ]);
    expect(ended.status, ended.stdout).toBe(0);
    expect(ended.stdout).toMatch(/The light is ready\./);
  });
});

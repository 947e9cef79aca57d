import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { canonicalLook } from '../../src/look/canonical-look.js';
import { readLook } from '../../src/look/read-look.js';
import { readCube } from '../../src/lut/formats/cube/read.js';
import { lutFormats } from '../../src/lut/formats/index.js';
import { makePicture } from '../../src/picture/picture.js';
import { encodeStill } from '../../src/stills/write-still.js';
import { gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const ready = (name: string) => join(projectRoot, 'looks', `${name}.json`);
const plainLook = at('plain.json');
writeFileSync(plainLook, JSON.stringify({ name: 'Nothing asked' }));

describe('gatelight build', () => {
  it('writes a table that says which look made it', () => {
    const ended = gatelight(['build', ready('xenon-hall'), '-o', at('hall.cube'), '--size', '17']);
    expect(ended.stderr).toBe('');
    expect(ended.status).toBe(0);
    const file = readCube(readFileSync(at('hall.cube')), 'hall.cube');
    const text = canonicalLook(readLook(readFileSync(ready('xenon-hall'), 'utf8'), 'x'));
    expect(file.title).toBe('Xenon in the town hall');
    expect(file.lut).toMatchObject({ kind: '3d', size: 17 });
    expect(new Map(file.comments).get('look SHA-256')).toBe(createHash('sha256').update(text).digest('hex'));
  });

  it('gives the same bytes each time', () => {
    for (const name of ['one.cube', 'two.cube'])
      gatelight(['build', ready('pink-reel'), '-o', at(name), '--size', '9']);
    expect(readFileSync(at('one.cube'))).toEqual(readFileSync(at('two.cube')));
  });

  it('writes the identity where nothing is asked', () => {
    gatelight(['build', plainLook, '-o', at('identity.cube'), '--size', '5']);
    const { lut } = readCube(readFileSync(at('identity.cube')), 'identity.cube');
    const nodes = Array.from({ length: 125 }, (_, i) => [i % 5, Math.floor(i / 5) % 5, Math.floor(i / 25)]);
    expect([...lut.values]).toEqual(nodes.flat().map((node) => node / 4));
  });

  it('--plain writes nothing but size and rows', () => {
    gatelight(['build', plainLook, '-o', at('bare.cube'), '--size', '2', '--plain']);
    const [first, ...rows] = readFileSync(at('bare.cube'), 'utf8').trimEnd().split('\n');
    expect(first).toBe('LUT_3D_SIZE 2');
    expect(rows).toHaveLength(8);
    for (const row of rows) expect(row).toMatch(/^\d\.\d{6} \d\.\d{6} \d\.\d{6}$/);
  });

  it('writes a Common LUT Format file by its name, with the same table and provenance', () => {
    for (const name of ['same.clf', 'same.cube'])
      expect(gatelight(['build', ready('pink-reel'), '-o', at(name), '--size', '9']).stderr).toBe('');
    const [clf, cube] = [lutFormats.commonLutFormat, lutFormats.cube].map((format) => {
      const reader = format.createReader('same');
      reader.write(readFileSync(at(`same${format.extension}`)));
      return reader.end();
    });
    expect(clf).toEqual(cube);
  });

  it('--curves writes one curve a channel, which check, apply and preview take', async () => {
    writeFileSync(at('darker.json'), JSON.stringify({ name: 'Darker', print: { exposureStops: -0.3 } }));
    const picture = makePicture(64, 4, { channels: 3, bits: 8 });
    picture.data.forEach((_, i) => (picture.data[i] = (i * 7) % 256));
    writeFileSync(at('still.tif'), (await encodeStill('still.tif', picture)).bytes);
    const curves = ['build', 'darker.json', '--curves', '-o', 'curves.cube'];
    expect(gatelight(curves, folder).stdout).toMatch(/^curves\.cube: Darker, curves of 1024 entries/);
    expect(gatelight(['check', 'curves.cube', '--against', 'darker.json'], folder).status).toBe(0);
    const apply = gatelight(['apply', 'curves.cube', 'still.tif', '-o', 'darker.tif'], folder);
    expect(apply.stderr).toBe('');
    const preview = gatelight(['preview', 'curves.cube', 'still.tif', '-o', 'seen.png'], folder);
    expect(preview.status).toBe(0);
    const mixed = gatelight(['build', ready('xenon-hall'), '--curves', '-o', at('mixed.cube')]);
    expect(isPlainRefusal(mixed), mixed.stderr).toBe(true);
    expect(mixed.stderr).toMatch(/mixes channels.* they would put \w+ \d+\.\d codes off.*without --curves/);
  });

  it('says how it writes a title that the file cannot hold as it is', () => {
    const titled = (title: string) => [
      'build',
      plainLook,
      '--size',
      '2',
      '--force',
      '-o',
      at('title.cube'),
      '--title',
      title,
    ];
    expect(gatelight(titled('Über "Hafen"')).stderr).toMatch(
      /its title is written "Uber 'Hafen'": such a file/,
    );
    expect(gatelight(titled('Uber Hafen')).stderr).toBe('');
    expect(gatelight([...titled('Über'), '--plain']).stderr).toBe('');
  });

  it('takes the look’s name in the working folder when no output is given', () => {
    expect(gatelight(['build', plainLook, '--size', '2'], folder).stdout).toMatch(
      /^plain\.cube: Nothing asked, 2 points/,
    );
  });

  it('overwrites nothing without --force, and a source never', () => {
    writeFileSync(at('kept.cube'), 'mine');
    const refused = gatelight(['build', plainLook, '-o', at('kept.cube')]);
    expect(isPlainRefusal(refused), refused.stderr).toBe(true);
    expect(refused.stderr).toContain('already exists. Use --force');
    expect(readFileSync(at('kept.cube'), 'utf8')).toBe('mine');
    const source = gatelight(['build', plainLook, '-o', plainLook, '--force']);
    expect(source.stderr).toContain('a source is never overwritten');
    expect(gatelight(['build', plainLook, '-o', at('kept.cube'), '--force', '--size', '2']).status).toBe(0);
  });

  it('reads a lamp file beside the look', () => {
    const lines = Array.from({ length: 41 }, (_, i) => `${380 + 10 * i},${100 + i}`);
    writeFileSync(at('lamp.csv'), `nm,power\n${lines.join('\n')}\n`);
    writeFileSync(
      at('lamp.json'),
      JSON.stringify({ name: 'Own lamp', projector: { lamp: { file: 'lamp.csv' } } }),
    );
    expect(gatelight(['build', at('lamp.json'), '-o', at('lamp.cube'), '--size', '3']).status).toBe(0);
    writeFileSync(at('lamp.csv'), lines.slice(0, 5).concat('430;12,5').join('\n'));
    const refused = gatelight(['build', at('lamp.json'), '-o', at('lamp2.cube')]);
    expect(isPlainRefusal(refused), refused.stderr).toBe(true);
    expect(refused.stderr).toContain('lamp.csv, line 6');
  });

  mkdirSync(at('folder'));
  mkdirSync(at('folder.cube'));
  symlinkSync(at('nowhere'), at('dangling.json'));
  writeFileSync(at('empty.json'), '');
  writeFileSync(at('misspelt.json'), '{"name": "x", "projektor": {}}');
  for (const [name, file] of [
    ['no-lamp', 'none.csv'],
    ['bad-lamp', 'bad.csv'],
  ])
    writeFileSync(at(`${name}.json`), JSON.stringify({ name, projector: { lamp: { file } } }));
  writeFileSync(at('bad.csv'), '# our lamp\nx\n');
  const refusals: readonly (readonly [string, string[], string])[] = [
    ['missing file', [at('none.json')], 'none.json'],
    ['a folder for a look', [at('folder')], 'is a folder'],
    ['a dangling link', [at('dangling.json')], 'dangling.json'],
    ['an empty file', [at('empty.json')], 'is empty'],
    ['a misspelt section', [at('misspelt.json')], 'Did you mean "projector"?'],
    [
      'a size no LUT has',
      [plainLook, '-o', at('large.cube'), '--size', '257'],
      'a whole number from 2 to 256',
    ],
    ['a size that is no number', [plainLook, '--size', '33x'], 'a whole number from 2 to 256.'],
    ['a size no curve has', [plainLook, '--curves', '--size', '1'], 'a whole number from 2 to 65536.'],
    ['an unknown option', [plainLook, '--sise', '33'], 'there is no option "--sise"'],
    [
      'a lamp file that is not there',
      [at('no-lamp.json')],
      `no-lamp.json, projector.lamp.file: ${at('none.csv')}: no such file`,
    ],
    [
      'a lamp file with a line that is none',
      [at('bad-lamp.json')],
      `bad-lamp.json, projector.lamp.file: ${at('bad.csv')}, line 2: "x"`,
    ],
    ['a missing output folder', [plainLook, '-o', at('none/x.cube')], 'there is no folder'],
    ['a name that is no LUT file’s', [plainLook, '-o', at('x.txt')], 'names that end in .cube or .clf'],
    ['a folder as output', [plainLook, '-o', at('folder.cube')], 'is a folder'],
    ['no look at all', [], '<look> is missing'],
  ];
  it.each(refusals)('refuses %s in plain words', (_, args, words) => {
    const ended = gatelight(['build', ...args], folder);
    expect(isPlainRefusal(ended), `${ended.status} ${ended.stderr}`).toBe(true);
    expect(ended.stderr).toContain(words);
  });

  it('leaves nothing half written', () => {
    expect(readdirSync(folder).filter((name) => name.includes('.part'))).toEqual([]);
  });
});

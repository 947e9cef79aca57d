import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { sampleLut } from '../../src/lut/interpolate.js';
import { lutFormats } from '../../src/lut/formats/index.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import type { Run } from '../../src/maths/matrix3.js';
import { gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);

const write = (name: string, look: Run, comments: readonly (readonly [string, string])[] = []) => {
  writeFileSync(at(name), lutFormats.cube.write(sampleLattice(look, 9), { title: 'Trial', comments }));
  return at(name);
};
const each =
  (change: (code: number) => number): Run =>
  (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = change(values[i]);
  };
const soft = write(
  'soft.cube',
  each((code) => 0.05 + 0.9 * code),
  [
    ['takes', 'hlg bt2020 full'],
    ['gives', 'srgb bt709 full'],
  ],
);
const bright = write(
  'bright.cube',
  each((code) => Math.min(1, 1.4 * code)),
);

const read = (path: string) => {
  const reader = lutFormats.cube.createReader(path);
  reader.write(readFileSync(path));
  return reader.end();
};

describe('gatelight undo', () => {
  it('writes a way back that says what it undoes, its signals turned about', () => {
    const ended = gatelight(['undo', soft, '-o', at('back.cube'), '--size', '17']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toMatch(/95 % within 0\.\d;/);
    expect(ended.stdout).toMatch(/^ +shadows +mid-tones +highlights$/m);
    expect(ended.stdout).toMatch(/back\.cube: good\.\n$/);
    const file = read(at('back.cube'));
    expect(file.title).toBe('Way back from Trial');
    expect(Object.fromEntries(file.comments)).toMatchObject({
      'way back from': 'Trial',
      'undone file SHA-256': createHash('sha256').update(readFileSync(soft)).digest('hex'),
      takes: 'srgb bt709 full',
      gives: 'hlg bt2020 full',
    });
    const codes = Float64Array.of(0.05 + 0.9 * 0.1, 0.05 + 0.9 * 0.5, 0.05 + 0.9 * 0.7);
    sampleLut(file.lut)(codes, 1);
    // half a code of 255, for the rounding of the file and the nodes between
    [0.1, 0.5, 0.7].forEach((code, c) => expect(Math.abs(codes[c] - code)).toBeLessThan(0.5 / 255));
  });

  it('tells what is burnt out, with exit code 1, and writes the file all the same', () => {
    const ended = gatelight(['undo', bright, '-o', at('bright-back.cube'), '--size', '9', '--json']);
    expect(ended.status, ended.stderr).toBe(1);
    const said = JSON.parse(ended.stdout) as { good: boolean; byCause: Record<string, number>; regions: [] };
    expect(said.good).toBe(false);
    expect(said.byCause['burnt-out']).toBeGreaterThan(0.3);
    expect(said.regions).toHaveLength(21);
    expect(existsSync(at('bright-back.cube'))).toBe(true);
    // what the file does not say is not passed on
    expect(read(at('bright-back.cube')).comments.map(([key]) => key)).not.toContain('takes');
  });

  it('shows where on a still it is lost', async () => {
    const data = Uint8Array.from({ length: 3 * 64 * 48 }, (_, i) => (Math.floor(i / 3) % 64 < 16 ? 240 : 90));
    await sharp(data, { raw: { width: 64, height: 48, channels: 3 } })
      .png()
      .toFile(at('still.png'));
    const args = ['undo', bright, '-o', at('b2.cube'), '--size', '9', '--still', at('still.png')];
    const ended = gatelight([...args, '--picture', at('lost.png')]);
    expect(ended.stdout).toMatch(/still\.png: 25 % burnt out\. See .*lost\.png\./);
    expect((await sharp(at('lost.png')).metadata()).width).toBe(1600);
  });

  it('holds values within 0 to 1 when asked', () => {
    const look: Run = each((code) => 0.3 + 0.4 * code ** 2);
    const inner = write('inner.cube', look);
    gatelight(['undo', inner, '-o', at('held.cube'), '--size', '9', '--clamp']);
    gatelight(['undo', inner, '-o', at('free.cube'), '--size', '9']);
    const ends = ({ values }: { values: Float64Array }) => [Math.min(...values), Math.max(...values)];
    expect(ends(read(at('held.cube')).lut)).toEqual([0, 1]);
    expect(ends(read(at('free.cube')).lut)[0]).toBeLessThan(0);
  });

  it('makes what check agrees with: ends beyond 0 to 1 are a note there, and a fault in any other file', () => {
    const inner = write(
      'squeezed.cube',
      each((code) => 0.1 + 0.8 * code),
    );
    expect(gatelight(['undo', inner, '-o', at('spread.cube'), '--size', '17']).status).toBe(0);
    const checked = gatelight(['check', at('spread.cube')]);
    expect([checked.status, checked.stderr]).toEqual([0, '']);
    expect(checked.stdout).toMatch(/^note .* come out beyond 0 to 1/m);
    const nameless = readFileSync(at('spread.cube'), 'utf8').replace(/^#.*\n/gm, '');
    writeFileSync(at('nameless.cube'), nameless);
    const other = gatelight(['check', at('nameless.cube')]);
    expect(other.status).toBe(1);
    expect(other.stdout).toMatch(/^FAULT .* come out beyond 0 to 1/m);
  });

  it.each([
    ['comes back', soft],
    ['does not', bright],
  ])('gives the answer that check gives of its file: %s', (name, lut) => {
    const back = at(`${name}.cube`);
    const { status } = gatelight(['undo', lut, '-o', back, '--size', '9']);
    const checked = gatelight(['check', back]);
    expect(checked.status).toBe(status);
    expect(checked.stdout).toMatch(/^(good |FAULT) Of all colours \d+(\.\d+)? % come back within 4 codes/m);
  });

  it('reads a 1D LUT backwards, and a LUT of a domain of its own', () => {
    writeFileSync(at('curve.cube'), 'LUT_1D_SIZE 3\n0 0 0\n0.7 0.6 0.5\n1 1 1\n');
    expect(gatelight(['undo', at('curve.cube'), '-o', at('curve-back.cube')]).status).toBe(0);
    expect(read(at('curve-back.cube')).lut.kind).toBe('1d');
    writeFileSync(
      at('domain.cube'),
      `LUT_3D_SIZE 2\nDOMAIN_MIN -1 -1 -1\nDOMAIN_MAX 2 2 2\n${Array.from({ length: 8 }, (_, i) => [i & 1, (i >> 1) & 1, i >> 2].map((bit) => 3 * bit - 1).join(' ')).join('\n')}\n`,
    );
    const ended = gatelight(['undo', at('domain.cube'), '-o', at('domain-back.cube'), '--size', '5']);
    expect(ended.status, ended.stderr).toBe(0); // the identity, written on a wider domain
    expect(ended.stdout).toContain('95 % within 0.1;');
  });

  it('writes nothing over a source or an existing file', () => {
    const before = readFileSync(soft);
    const over = gatelight(['undo', soft, '-o', soft, '--force']);
    expect(isPlainRefusal(over), over.stderr).toBe(true);
    expect(readFileSync(soft).equals(before)).toBe(true);
    writeFileSync(at('mine.cube'), 'mine');
    expect(isPlainRefusal(gatelight(['undo', soft, '-o', at('mine.cube')]))).toBe(true);
    expect(readFileSync(at('mine.cube'), 'utf8')).toBe('mine');
  });

  it.each([
    ['a look', [join(projectRoot, 'looks/pink-reel.json'), '-o', at('x.cube')], /gatelight build/],
    ['a missing file', [at('none.cube'), '-o', at('x.cube')], /none\.cube/],
    ['an output of another kind', [soft, '-o', at('x.txt')], /x\.txt/],
    ['the range of no movie', [soft, '-o', at('x.cube'), '--range', 'legal'], /--range: is for movie files/],
    [
      'that of a still',
      [soft, '-o', at('x.cube'), '--still', 'a.png', '--matrix', 'bt709'],
      /--matrix: is for/,
    ],
    ['a picture without a still', [soft, '-o', at('x.cube'), '--picture', at('x.png')], /--still/],
    [
      'a picture of another kind',
      [soft, '-o', at('x.cube'), '--still', 's.png', '--picture', 'x.gif'],
      /gif/,
    ],
    ['a missing still', [soft, '-o', at('x.cube'), '--size', '5', '--still', at('none.png')], /none\.png/],
    ['66 points', [soft, '-o', at('x.cube'), '--size', '66'], /2 to 65/],
  ])('refuses %s in plain words', (_, args, words) => {
    const ended = gatelight(['undo', ...args]);
    // a note on what the file does not say may stand before
    expect(ended.status).toBe(2);
    expect(ended.stdout).toBe('');
    expect(ended.stderr).toMatch(words);
    expect(ended.stderr).not.toMatch(/\n\s+at /);
    expect(existsSync(at('x.cube'))).toBe(false);
  });
});

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { gatelight, isPlainRefusal, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();

describe('gatelight demo', () => {
  it('replaces nothing unasked, and then writes nothing at all', () => {
    const demo = join(folder, 'demo');
    mkdirSync(demo);
    const own = join(demo, 'tram-pink.png'); // among the last that are written
    writeFileSync(own, 'my own still');
    const refused = gatelight(['demo', '-o', 'demo'], folder);
    expect(isPlainRefusal(refused)).toBe(true);
    expect(refused.stderr).toMatch(/tram-pink\.png: already exists.*--force/);
    expect([readdirSync(demo), readFileSync(own, 'utf8')]).toEqual([['tram-pink.png'], 'my own still']);
  });

  it('with --force goes over what is there', () => {
    const { status, stdout, stderr } = gatelight(['demo', '-o', 'demo', '--force'], folder);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout.match(/^good /gm)).toHaveLength(10);
    expect(readFileSync(join(folder, 'demo/tram-pink.png'), 'latin1').slice(1, 4)).toBe('PNG');
  });
});

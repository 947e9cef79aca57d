import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const looks = readdirSync(join(projectRoot, 'looks'));

describe('gatelight check', () => {
  it.each(looks)('finds no fault in the ready look %s', (look) => {
    const [path, output] = [join(projectRoot, 'looks', look), at(`${look}.cube`)];
    expect(gatelight(['build', path, '-o', output]).status).toBe(0);
    const ended = gatelight(['check', output, '--against', path, '--json']);
    const { good, findings } = JSON.parse(ended.stdout) as { good: boolean; findings: object[] };
    expect(ended.status, ended.stdout).toBe(0);
    expect(good).toBe(true);
    expect(findings.length).toBeGreaterThan(10);
  });

  it('says NOT GOOD, and ends with 1, for a table whose highlights burn out', () => {
    const rows = Array.from({ length: 125 }, (_, i) => [i % 5, Math.floor(i / 5) % 5, Math.floor(i / 25)])
      .map((node) => node.map((n) => Math.min(1, n / 2)).join(' '))
      .join('\n');
    writeFileSync(at('burnt.cube'), `LUT_3D_SIZE 5\n${rows}\n`);
    const ended = gatelight(['check', at('burnt.cube')]);
    expect(ended.status).toBe(1);
    expect(ended.stdout).toMatch(/^FAULT/m);
    expect(ended.stdout).toContain('NOT GOOD');
  });

  it('finds a fault in a table held against another look', () => {
    const path = join(projectRoot, 'looks/candle-warm-old-lamp.json');
    const ended = gatelight(['check', at('pink-reel.json.cube'), '--against', path]);
    expect(ended.status, ended.stdout).toBe(1);
  });

  it('ends the picture at the open gate that the file names, as its look does', () => {
    const correction = {
      name: 'Dim gate',
      camera: { openGate: 0.6 },
      stock: { loss: { cyan: 0.3, magenta: 0.05, yellow: 0.25 } },
    };
    writeFileSync(at('dim.json'), JSON.stringify(correction));
    expect(gatelight(['build', at('dim.json'), '-o', at('dim.cube')]).status).toBe(0);
    const ends = (...more: string[]) =>
      gatelight(['check', at('dim.cube'), ...more])
        .stdout.split('\n')
        .filter((line) => line.includes('open gate'));
    expect(ends().join()).toContain('up to the open gate');
    expect(ends()).toEqual(ends('--against', at('dim.json')));
  });

  it('refuses a broken file with its line, from every command, with exit 2', () => {
    const good = readFileSync(at('xenon-hall.json.cube'), 'utf8').split('\n');
    good[20] = '0.1 0,2 0.3';
    writeFileSync(at('comma.cube'), good.join('\n'));
    for (const args of [
      ['check', at('comma.cube')],
      ['preview', at('comma.cube'), 'x.png'],
      ['apply', at('comma.cube'), at('comma.cube'), '-o', 'y.png'],
    ]) {
      const ended = gatelight(args, folder);
      expect(isPlainRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toContain('comma.cube, line 21');
    }
  });

  it('refuses a file of another kind by its name', () => {
    const ended = gatelight(['check', join(projectRoot, 'package.json')]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain('.cube');
  });
});

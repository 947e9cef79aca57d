import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { remakeTables } from '../src/cli/readme-tables.js';
import { parseRecord } from '../src/files/reel-log/entry.js';
import { readLook } from '../src/look/read-look.js';
import { gatelight, projectRoot } from './cli/gatelight.js';

const readme = readFileSync(join(projectRoot, 'README.md'), 'utf8');
const scripts = (JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8')) as { scripts: object })
  .scripts;

describe('README.md', () => {
  it('has the tables that follow from schema, looks and checks', () => {
    expect(remakeTables(readme) === readme, 'the tables are old: npm run docs').toBe(true);
  });

  it('names only scripts that exist', () => {
    const named = [...readme.matchAll(/npm run ([a-z:-]+)/g)].map(([, name]) => name);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it('links only to what is there', () => {
    const links = [...readme.matchAll(/\]\((?!https?:)([^)#]+)\)/g)].map(([, path]) => path);
    expect(links.length).toBeGreaterThan(3);
    expect(links.filter((path) => !existsSync(join(projectRoot, path)))).toEqual([]);
  });

  it('shows a look that can be read', () => {
    const [, json] = /```json\n([^]*?)```/.exec(readme) ?? [];
    expect(readLook(json, 'README.md').name).toBe('Warm stock, lamp light');
  });

  it('shows a record of the reel log that can be read', () => {
    const [, json = ''] = /```json\n({ "version"[^]*?)```/.exec(readme) ?? [];
    const whole = json.replace(/"([0-9a-f]{4})\.\.\."/g, (_, start: string) => `"${start.padEnd(64, '0')}"`);
    expect(parseRecord(whole)).toMatchObject({ entry: { reel: 'Harbour 3', verify: { holds: false } } });
  });

  it('names every command, and only those', () => {
    const help = gatelight(['--help']).stdout;
    const commands = [...help.matchAll(/^ {2}([a-z]+) .*$/gm)]
      .map(([, name]) => name)
      .filter((name) => name !== 'help');
    const named = new Set(
      [...readme.matchAll(/gatelight ([a-z]+)/g)].map(([, name]) => name).filter((name) => name !== 'help'),
    );
    expect(commands.length).toBeGreaterThan(4);
    expect([...named].sort()).toEqual(commands.sort());
  });

  it('finds a note in plain words in every ready look', () => {
    for (const file of readdirSync(join(projectRoot, 'looks'))) {
      const { note } = readLook(readFileSync(join(projectRoot, 'looks', file), 'utf8'), file);
      expect(note.length, file).toBeGreaterThan(60);
    }
  });
});

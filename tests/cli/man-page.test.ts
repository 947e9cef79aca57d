import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { manPage, roff } from '../../src/cli/man-page.js';
import { examplesOf, outlines } from '../../src/cli/outline.js';
import { makeProgram } from '../../src/cli/program.js';
import { projectRoot } from './gatelight.js';

const tree = outlines(await makeProgram());
const page = manPage(tree, '7.8.9');

describe('manual page', () => {
  it('tells every command, option and example', () => {
    for (const { place, command, below } of tree.slice(1)) {
      expect(page).toContain(`.SS \\fB${roff(`gatelight ${place}`)}\\fP`);
      for (const example of examplesOf(command)) expect(page).toContain(`\n${roff(example)}\n`);
      if (below.length === 0)
        for (const { long } of command.options) expect(page).toContain(roff(long ?? ''));
    }
  });

  it('tells every variable that the program heeds', () => {
    const folder = join(projectRoot, 'src');
    const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    );
    const heeded = sources.flatMap((name) =>
      [...readFileSync(join(folder, name), 'utf8').matchAll(/GATELIGHT_[A-Z]+/g)].map(
        ([variable]) => variable,
      ),
    );
    expect(new Set(heeded).size).toBeGreaterThan(2);
    for (const variable of heeded) expect(page).toContain(`.TP\n\\fB${variable}\\fP\n`);
  });

  it('is ASCII, and the same each time', () => {
    expect(page).toMatch(/^[\x20-\x7e\n]+$/);
    expect(manPage(tree, '7.8.9')).toBe(page);
    expect(page).toMatch(/^\.TH GATELIGHT 1 "" "gatelight 7\.8\.9"/);
  });

  it.each([
    ['.SH no request', '\\&.SH no request'],
    ["'quoted at the start", "\\&'quoted at the start"],
    ['back\\slash', 'back\\eslash'],
    ['--dash', '\\-\\-dash'],
    ['the look’s × Ж', 'the look\\(cqs \\(mu \\[u0416]'],
  ])('takes %s for words', (text, expected) => {
    expect(roff(text)).toBe(expected);
  });
});

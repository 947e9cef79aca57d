import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { gatelight, isPlainRefusal, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const noBash = spawnSync('bash', ['--version']).status !== 0;

const script = gatelight(['completion', 'bash']);
writeFileSync(join(folder, 'gatelight.bash'), script.stdout);

/** What bash proposes for the last of the words, asked as the Tab key asks. */
function proposed(...words: string[]): string[] {
  const asking = `
    source gatelight.bash
    COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
    $(complete -p gatelight | sed 's/.*-F \\([^ ]*\\) .*/\\1/')
    printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { status, stdout, stderr } = spawnSync('bash', ['-c', asking, 'bash', 'gatelight', ...words], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  return stdout.split('\n').filter((word) => word !== '');
}

describe.skipIf(noBash)('completion in bash', () => {
  it.each<[string[], string[]]>([
    [['lo'], ['log']],
    [['b'], ['build']],
    [['log', 're'], ['rebuild']],
    [['log', 'add', '--ga'], ['--gauge']],
    [['build', '--curves', 'look.json', '--ti'], ['--title']],
    [
      ['preview', 'a.cube', 'b.png', '--flip', ''],
      ['h', 'v', 'hv'],
    ],
    [
      ['apply', '--flip', 'h'],
      ['h', 'hv'],
    ],
    [['completion', 'f'], ['fish']],
    [['capture', '--ga'], ['--gauge']],
    [['help', 'ch'], ['check']],
    [['-V'], ['-V']],
  ])('%j -> %j', (words, expected) => {
    expect(proposed(...words)).toEqual(expected);
  });

  it('proposes every command, and no option of another', () => {
    const all = proposed('');
    for (const name of ['build', 'check', 'preview', 'apply', 'measure', 'log', 'help'])
      expect(all).toContain(name);
    expect(proposed('check', '--size')).toEqual([]);
  });

  it.each([
    ['build', ''],
    ['build', '-o', ''],
    ['log', 'add', '--cube', 'x'],
  ])('leaves files to the shell: %s %s', (...words) => {
    expect(proposed(...words)).toEqual([]);
  });
});

it('is refused for another shell', () => {
  const ended = gatelight(['completion', 'tcsh']);
  expect(isPlainRefusal(ended), ended.stderr).toBe(true);
  expect(ended.stderr).toContain('bash, zsh, fish');
});

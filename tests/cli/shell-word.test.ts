import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { shellWord } from '../../src/cli/shell-word.js';

const names = [
  'still.png',
  'Gro\u00dfvaters Rolle 3.mkv@1:20.5',
  'o\u2019clock.png',
  "o'clock.png",
  '$HOME & `date`; rm *.png',
  '~/reel.mkv',
  'a\\b "c".tif',
  '(1).jpg',
];

describe('a name in a command that is suggested', () => {
  it.skipIf(process.platform === 'win32').each(names)('%s comes back out of a shell', (name) => {
    const { stdout } = spawnSync('sh', ['-c', `printf %s ${shellWord(name)}`], { encoding: 'utf8' });
    expect(stdout).toBe(name);
  });

  it.each(['still.png', '../reel/K\u00fcste-1.tif', 'reel.mkv@f250'])('%s stays as it is', (name) => {
    expect(shellWord(name)).toBe(name);
  });

  it('is in double quotes on Windows, and only where it has to be', () => {
    expect(shellWord('C:\\reels\\one.png', 'win32')).toBe('C:\\reels\\one.png');
    expect(shellWord('C:\\my reels\\one.png', 'win32')).toBe('"C:\\my reels\\one.png"');
  });
});

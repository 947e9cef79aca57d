import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { builtMain, gatelight, isPlainRefusal, projectRoot, temporaryFolder } from '../cli/gatelight.js';

const base = temporaryFolder();
let count = 0;
let folder: string;
const at = (name: string) => join(folder, name);
const run = (...args: string[]) => gatelight(args, folder);
const names = (path = folder) => readdirSync(path).sort();
const still = readFileSync(join(import.meta.dirname, 'corpus/still/grey-16.png'));

/** With these a LUT file needs no note of what it takes and gives. */
const signals = '# takes: srgb bt709 full\n# gives: srgb bt709 full\n';

beforeEach(() => {
  folder = join(base, `${count++}`);
  mkdirSync(folder);
  cpSync(join(projectRoot, 'looks/xenon-hall.json'), at('hall.json'));
  writeFileSync(at('plain.cube'), `${signals}LUT_3D_SIZE 2\n${'0 0 0\n'.repeat(7)}1 1 1\n`);
  writeFileSync(at('still.png'), still);
});

/** Commands that write, each into one place. */
const writing: Record<string, (output: string) => string[]> = {
  build: (output) => ['build', 'hall.json', '-o', `${output}/out.cube`],
  apply: (output) => ['apply', 'plain.cube', 'still.png', '-o', `${output}/out.png`],
  'apply to a folder': (output) => ['apply', 'plain.cube', 'still.png', '-o', `${output}/out`],
  preview: (output) => ['preview', 'plain.cube', 'still.png', '-o', `${output}/seen.png`],
  undo: (output) => ['undo', 'plain.cube', '-o', `${output}/back.cube`, '--size', '5'],
  log: (output) => ['log', 'add', 'A', '--log', `${output}/reels.jsonl`],
};

describe('links', () => {
  it.each<[string, string[], RegExp]>([
    ['build', ['build', 'loop.json'], /loop\.json: its links lead round in a circle/],
    ['check', ['check', 'loop.cube'], /links lead round in a circle/],
    ['apply', ['apply', 'plain.cube', 'loop.png', '-o', 'x.png'], /links lead round in a circle/],
    ['preview', ['preview', 'plain.cube', 'loop.png', '-o', 'x.png'], /links lead round in a circle/],
    ['log show', ['log', 'show', '--log', 'loop.json'], /links lead round in a circle/],
    ['log add', ['log', 'add', 'A', '--log', 'loop.json'], /symbolic link that leads nowhere/],
    ['a link as output', ['build', 'hall.json', '-o', 'loop.cube', '--force'], /is a link/],
    [
      'a link to the source as output',
      ['apply', 'plain.cube', 'still.png', '-o', 'way.png', '--force'],
      /a source is never overwritten/,
    ],
    [
      'the source by another name',
      ['apply', 'plain.cube', 'still.png', '-o', 'twin.png', '--force'],
      /a source is never overwritten/,
    ],
  ])('%s refuses one that leads in a circle or back', (_, args, words) => {
    for (const name of ['loop.json', 'loop.cube', 'loop.png']) symlinkSync(name, at(name));
    symlinkSync('still.png', at('way.png'));
    linkSync(at('still.png'), at('twin.png'));
    const before = names();
    const ended = run(...args);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toMatch(words);
    expect(names()).toEqual(before);
    expect(readFileSync(at('still.png')).equals(still)).toBe(true);
  });

  it('a folder that holds itself is gone through once, and a loop in it costs no other still', () => {
    mkdirSync(at('frames'));
    cpSync(at('still.png'), at('frames/a.png'));
    symlinkSync('.', at('frames/again'));
    symlinkSync('b.png', at('frames/b.png'));
    symlinkSync('../still.png', at('frames/c.png'));
    const ended = run('apply', 'plain.cube', 'frames', '-o', 'out');
    expect(ended.status).toBe(1);
    expect(ended.stderr).toMatch(/b\.png: its links lead round in a circle/);
    expect(names(at('out'))).toEqual(['a.png', 'c.png']);
  });
});

describe('odd names', () => {
  it('blanks, line ends, other letters, quotes and dashes are names like others', () => {
    mkdirSync(at('frames'));
    const odd = [
      ' two  blanks ',
      'new\nline',
      '🎞 Ж 漢',
      '-dash',
      '--help',
      '"quoted" $HOME `x`',
      'a;b&c|d',
      '%s%n',
      '*',
    ];
    for (const name of odd) cpSync(at('still.png'), at(`frames/${name}.png`));
    const ended = run('apply', 'plain.cube', 'frames', '-o', 'out');
    expect(ended, ended.stderr).toMatchObject({ status: 0, stderr: '' });
    expect(names(at('out'))).toEqual(odd.map((name) => `${name}.png`).sort());
    cpSync(at('still.png'), at('-dash.png'));
    expect(run('preview', '-o', '-seen.png', '--', 'plain.cube', '-dash.png').status).toBe(0);
    expect(existsSync(at('-seen.png'))).toBe(true);
  });

  it('a line end in a name makes no second line of an error', () => {
    const { stderr } = run('check', 'new\nline.cube');
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });

  it.skipIf(process.platform !== 'linux')('one that is not in UTF-8 is told of, and costs no other', () => {
    mkdirSync(at('frames'));
    cpSync(at('still.png'), at('frames/a.png'));
    execFileSync('bash', ['-c', `cp still.png $'frames/b\\xff.png'`], { cwd: folder });
    const ended = run('apply', 'plain.cube', 'frames', '-o', 'out');
    expect(ended.status).toBe(1);
    expect(ended.stderr).toMatch(/If its name is not in UTF-8, rename it\./);
    expect(names(at('out'))).toEqual(['a.png']);
  });
});

/** Runs as somebody else, who may read everything and write only where everybody may. */
const nobody = { uid: 65534, gid: 65534 };
const asNobody = (args: string[], cwd = folder) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtMain, ...args], {
    cwd,
    encoding: 'utf8',
    ...(process.getuid?.() === 0 ? nobody : {}),
  });
  return { status, stdout, stderr };
};

/** A checkout below a folder that is closed to others (as root's own is) is of no use to somebody else. */
const nobodyCanRun = process.platform !== 'win32' && asNobody(['--version'], projectRoot).status === 0;
const whyNot = 'somebody else may not read this checkout';

describe('places that cannot be written', () => {
  it.for(Object.entries(writing))('a read-only folder: %s', ([, args], { skip }) => {
    skip(!nobodyCanRun, whyNot);
    chmodSync(base, 0o755);
    mkdirSync(at('locked'));
    chmodSync(at('locked'), 0o555);
    const ended = asNobody(args('locked'));
    // Where the checkout itself is closed to others, nobody else can run the program at all.
    expect(ended.stderr).toMatch(/permission denied|may not be written/);
    expect(ended.stderr).not.toMatch(/fault of the program|\n\s+at /);
    expect(ended.status).toBe(2);
    expect(names(at('locked'))).toEqual([]);
  });

  it('a look that may not be read', ({ skip }) => {
    skip(!nobodyCanRun, whyNot);
    chmodSync(base, 0o755);
    chmodSync(at('hall.json'), 0);
    const ended = asNobody(['check', 'plain.cube', '--against', 'hall.json']);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain('hall.json: permission denied');
  });

  it.for(Object.entries(writing))('a full disk: %s', ([, args], { skip }) => {
    const disk = at('disk');
    mkdirSync(disk);
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=16k', 'tmpfs', disk]).status === 0;
    skip(!mounted, 'a small disk may be mounted by root alone');
    try {
      writeFileSync(join(disk, 'filling'), Buffer.alloc(16384));
      const ended = run(...args('disk'));
      expect(ended.stderr).toMatch(/the disk is full/);
      expect(ended.stderr).not.toMatch(/fault of the program|\n\s+at /);
      expect(ended.status).toBe(2);
      expect(readdirSync(disk, { recursive: true }).filter((name) => name !== 'out')).toEqual(['filling']);
    } finally {
      spawnSync('umount', [disk]);
    }
  });
});

describe('folders that change or are large', () => {
  it('a still that vanishes while others are worked on is told of, and costs no other', async () => {
    mkdirSync(at('frames'));
    const frames = Array.from({ length: 300 }, (_, i) => `${String(i).padStart(4, '0')}.png`);
    for (const name of frames) cpSync(at('still.png'), at(`frames/${name}`));
    const child = spawn(
      process.execPath,
      [builtMain, 'apply', 'plain.cube', 'frames', '-o', 'out', '--jobs', '1'],
      {
        cwd: folder,
        stdio: ['ignore', 'ignore', 'pipe'],
      },
    );
    let said = '';
    child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()));
    const ended = new Promise<number | null>((done) => child.on('close', done));
    while (!existsSync(at('out/0000.png'))) await new Promise((done) => setTimeout(done, 2));
    rmSync(at('frames/0299.png'));
    expect(await ended).toBe(1);
    expect(said).toMatch(/0299\.png: no such file/);
    expect(names(at('out'))).toEqual(frames.slice(0, -1));
  });

  it('three thousand stills among as many other files', () => {
    mkdirSync(at('frames'));
    for (let i = 0; i < 3000; i++) {
      linkSync(at('still.png'), at(`frames/${i}.png`));
      writeFileSync(at(`frames/${i}.txt`), '');
    }
    const ended = run('apply', 'plain.cube', 'frames', '-o', 'out', '--jobs', '4');
    expect(ended, ended.stderr.slice(0, 500)).toMatchObject({ status: 0, stderr: '' });
    expect(names(at('out'))).toHaveLength(3000);
  }, 300_000);
});

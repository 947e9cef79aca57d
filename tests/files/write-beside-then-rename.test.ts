import { execFileSync } from 'node:child_process';
import {
  linkSync,
  mkdirSync,
  readFileSync,
  readlinkSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkTarget, writeSafely } from '../../src/files/write-beside-then-rename.js';
import { problemOf, temporaryFolder } from './folder.js';

const { path, names } = temporaryFolder();
const keep = { force: false };
const force = { force: true };
const text = (name: string) => readFileSync(path(name), 'utf8');

describe('writeSafely', () => {
  it('writes bytes and text, and leaves nothing else behind', async () => {
    await writeSafely(path('a.cube'), 'Größe 33\n', keep);
    await writeSafely(path('b.bin'), Uint8Array.from([0, 255, 10]), keep);
    await writeSafely(path('empty'), '', keep);
    expect(text('a.cube')).toBe('Größe 33\n');
    expect([...readFileSync(path('b.bin'))]).toEqual([0, 255, 10]);
    expect(text('empty')).toBe('');
    expect(names()).toEqual(['a.cube', 'b.bin', 'empty']);
  });

  it('gives the file the usual permissions', async () => {
    writeFileSync(path('plain'), '');
    await writeSafely(path('a'), 'x', keep);
    expect(statSync(path('a')).mode).toBe(statSync(path('plain')).mode);
  });

  it('keeps an existing file, and replaces it with force', async () => {
    writeFileSync(path('a'), 'old');
    expect(await problemOf(writeSafely(path('a'), 'new', keep))).toEqual({
      file: path('a'),
      what: 'already exists',
      hint: 'Use --force to replace it, or choose another name.',
    });
    expect(text('a')).toBe('old');
    await writeSafely(path('a'), 'new', force);
    expect(text('a')).toBe('new');
    expect(names()).toEqual(['a']);
  });

  it('lets one of many at the same time have the name, whole, and refuses the others', async () => {
    const texts = Array.from({ length: 12 }, (_, i) => String(i).repeat(100_000));
    const results = await Promise.allSettled(texts.map((data) => writeSafely(path('a'), data, keep)));
    expect(results.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    const winner = results.findIndex(({ status }) => status === 'fulfilled');
    expect(text('a')).toBe(texts[winner]);
    for (const result of results)
      if (result.status === 'rejected') expect(String(result.reason)).toContain('already exists');
    expect(names()).toEqual(['a']);
  });

  it('leaves one of many whole with force', async () => {
    const texts = Array.from({ length: 12 }, (_, i) => String(i).repeat(100_000));
    await Promise.all(texts.map((data) => writeSafely(path('a'), data, force)));
    expect(texts).toContain(text('a'));
    expect(names()).toEqual(['a']);
  });
});

describe('sources', () => {
  const refused = 'is one of the sources, and a source is never overwritten';

  it('never overwrites one, by whatever name, force or not', async () => {
    mkdirSync(path('reel'));
    writeFileSync(path('reel/still.png'), 'film');
    linkSync(path('reel/still.png'), path('twin.png'));
    symlinkSync(path('reel'), path('link'));
    symlinkSync(path('reel/still.png'), path('way.png'));
    const sources = [path('other.png'), path('reel/still.png')];
    for (const target of [
      'reel/still.png',
      'twin.png',
      'link/still.png',
      'reel/../reel/still.png',
      'way.png',
    ])
      for (const choice of [keep, force])
        expect((await problemOf(writeSafely(path(target), 'x', { ...choice, sources }))).what).toBe(refused);
    expect(text('reel/still.png')).toBe('film');
  });

  it('knows a source that is given as a link', async () => {
    writeFileSync(path('still.png'), 'film');
    symlinkSync(path('still.png'), path('way.png'));
    const work = writeSafely(path('still.png'), 'x', { force: true, sources: [path('way.png')] });
    expect((await problemOf(work)).what).toBe(refused);
  });

  it('does not mind sources that are elsewhere or gone', async () => {
    writeFileSync(path('a'), 'old');
    writeFileSync(path('b'), 'film');
    await writeSafely(path('a'), 'new', { force: true, sources: [path('b'), path('gone')] });
    expect([text('a'), text('b')]).toEqual(['new', 'film']);
  });
});

describe('targets that cannot be', () => {
  it.each([
    ['a folder', 'folder', 'is a folder, not a file'],
    ['a link', 'link', 'is a link'],
    ['a link to nothing', 'dangling', 'is a link'],
    ['a pipe', 'pipe', 'is a device or a pipe, not a file'],
    ['a folder that is missing', 'missing/a', /there is no folder .*missing/],
    ['a file used as a folder', 'file/a', /a part of the path is a file, not a folder/],
    ['a name that is too long', 'x'.repeat(300), /the name is too long for this disk/],
    ['no name', 'folder/', 'names no file'],
    ['a name no file can have', 'a\0b', /is not a name a file can have/],
  ])('%s', async (_, name, what) => {
    mkdirSync(path('folder'));
    writeFileSync(path('file'), 'kept');
    symlinkSync(path('file'), path('link'));
    symlinkSync(path('nowhere'), path('dangling'));
    execFileSync('mkfifo', [path('pipe')]);
    const before = names();
    for (const choice of [keep, force]) {
      const problem = await problemOf(writeSafely(path(name), 'x', choice));
      expect(problem.what).toMatch(what);
      expect(problem.file).toBe(path(name));
    }
    expect(names()).toEqual(before);
    expect(text('file')).toBe('kept');
    expect(readlinkSync(path('link'))).toBe(path('file'));
  });

  it('refuses a device and an empty name', async () => {
    expect((await problemOf(writeSafely('/dev/null', 'x', force))).what).toBe(
      'is a device or a pipe, not a file',
    );
    expect((await problemOf(writeSafely('', 'x', force))).what).toBe('names no file');
  });
});

describe('checkTarget', () => {
  it('refuses before any work is done, and creates nothing', async () => {
    writeFileSync(path('a'), 'old');
    expect((await problemOf(checkTarget(path('a'), keep))).what).toBe('already exists');
    await checkTarget(path('a'), force);
    await checkTarget(path('b'), keep);
    expect((await problemOf(checkTarget(path('missing/b'), keep))).what).toMatch(
      /there is no folder .*missing/,
    );
    expect(names()).toEqual(['a']);
  });
});

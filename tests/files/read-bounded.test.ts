import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readBytesBounded, readTextBounded, sizeInWords, streamFile } from '../../src/files/read-bounded.js';
import { problemOf, temporaryFolder } from './folder.js';

const { path } = temporaryFolder();
const nothing = () => undefined;

describe('streamFile', () => {
  it('hands on every byte in order, and says how many', async () => {
    const bytes = Uint8Array.from({ length: 200_001 }, (_, i) => (i * 31) % 251);
    writeFileSync(path('a'), bytes);
    const pieces: Uint8Array[] = [];
    expect(await streamFile(path('a'), (piece) => pieces.push(piece.slice()))).toBe(bytes.length);
    expect(Buffer.compare(Buffer.concat(pieces), bytes)).toBe(0);
    expect(pieces.length).toBeGreaterThan(1);
  });

  it('gives no piece for an empty file', async () => {
    writeFileSync(path('a'), '');
    const work = streamFile(path('a'), () => {
      throw new Error('a piece');
    });
    expect(await work).toBe(0);
  });

  it('ends with what the receiver throws', async () => {
    writeFileSync(path('a'), 'x'.repeat(200_000));
    let calls = 0;
    const work = streamFile(path('a'), () => {
      calls++;
      throw new RangeError('enough');
    });
    await expect(work).rejects.toThrow('enough');
    expect(calls).toBe(1);
  });

  it('stops at the limit', async () => {
    writeFileSync(path('a'), 'x'.repeat(1000));
    expect(await streamFile(path('a'), nothing, { maxBytes: 1000 })).toBe(1000);
    expect(await problemOf(streamFile(path('a'), nothing, { maxBytes: 999 }))).toMatchObject({
      file: path('a'),
      what: 'is too large',
      allowed: '999 bytes at most',
    });
  });

  it('follows a link to a file', async () => {
    writeFileSync(path('a'), 'abc');
    symlinkSync(path('a'), path('link'));
    expect(await streamFile(path('link'), nothing)).toBe(3);
  });

  it.each([
    ['missing', 'no such file or folder'],
    ['file/inside', 'a part of the path is a file, not a folder'],
    ['folder', 'is a folder, not a file'],
    ['pipe', 'is a device or a pipe, not a file'],
    ['circle', 'its links lead round in a circle'],
    ['x'.repeat(300), 'the name is too long for this disk'],
    ['a\0b', 'is not a name a file can have'],
  ])('refuses %.12s', async (name, what) => {
    writeFileSync(path('file'), '');
    mkdirSync(path('folder'));
    execFileSync('mkfifo', [path('pipe')]);
    symlinkSync(path('circle'), path('circle'));
    expect(await problemOf(streamFile(path(name), nothing))).toMatchObject({ file: path(name), what });
  });

  it('refuses devices, endless ones too', async () => {
    for (const device of ['/dev/zero', '/dev/null'])
      expect((await problemOf(streamFile(device, nothing))).what).toBe('is a device or a pipe, not a file');
  });
});

describe('readBytesBounded', () => {
  it('reads up to the limit, and refuses empty files unless they may be', async () => {
    writeFileSync(path('a'), Uint8Array.from([1, 2, 3]));
    writeFileSync(path('empty'), '');
    expect([...(await readBytesBounded(path('a'), 3))]).toEqual([1, 2, 3]);
    expect((await problemOf(readBytesBounded(path('a'), 2))).what).toBe('is too large');
    expect((await problemOf(readBytesBounded(path('empty'), 9))).what).toBe('is empty');
    expect(await readBytesBounded(path('empty'), 9, { emptyAllowed: true })).toHaveLength(0);
  });
});

describe('readTextBounded', () => {
  it('reads UTF-8 across pieces, without its byte order mark', async () => {
    const text = 'é漢😀'.repeat(30_000);
    writeFileSync(path('a'), `\uFEFF${text}`);
    expect(await readTextBounded(path('a'), 1_000_000)).toBe(text);
  });

  it.each([
    ['Latin-1', Buffer.from('Größe', 'latin1')],
    ['UTF-16', Buffer.from('\uFEFFlook', 'utf16le')],
    ['half a letter', Buffer.from('é').subarray(0, 1)],
  ])('refuses %s', async (_, bytes) => {
    writeFileSync(path('a'), bytes);
    expect(await problemOf(readTextBounded(path('a'), 100))).toMatchObject({
      what: 'is not text in UTF-8',
      hint: 'Save it as UTF-8 text.',
    });
  });
});

it.each([
  [0, '0 bytes'],
  [999, '999 bytes'],
  [8000, '8 kB'],
  [120_000_000, '120 MB'],
])('%i is %s', (bytes, words) => {
  expect(sizeInWords(bytes)).toBe(words);
});

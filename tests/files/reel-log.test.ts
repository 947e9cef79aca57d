import {
  existsSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
  chmodSync,
  mkdirSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { recordLine } from '../../src/files/reel-log/entry.js';
import { appendReel, largestLog, longestRecord, readReelLog, reelLogCsv } from '../../src/files/reel-log.js';
import { fullEntry, plainEntry } from './reel-log-entries.js';

let folder: string;
let log: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'reel-log-'));
  log = join(folder, 'reels.jsonl');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const reels = async () => (await readReelLog(log)).entries.map(({ reel }) => reel);

async function problemOf(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(InputError);
  return (error as InputError).problems.map(({ field, what }) => `${field ?? ''}: ${what}`).join('\n');
}

describe('reel log', () => {
  it('gives back what was put on record, one line a reel', async () => {
    await appendReel(log, fullEntry);
    await appendReel(log, plainEntry('B'));
    expect(await readReelLog(log)).toEqual({ entries: [fullEntry, plainEntry('B')], damaged: [] });
    expect(readFileSync(log, 'utf8').split('\n')).toHaveLength(3);
    expect(readdirSync(folder)).toEqual(['reels.jsonl']);
  });

  it.each(['two words', 'new\nline', '🎞 reels', '-dash', 'ünicode'])('a log named "%s"', async (name) => {
    log = join(folder, name);
    await appendReel(log, plainEntry('A'));
    expect(await reels()).toEqual(['A']);
  });

  it('a file cut at any byte loses no earlier line, and takes the next one whole', async () => {
    await appendReel(log, plainEntry('A'));
    const first = readFileSync(log);
    await appendReel(log, plainEntry('B'));
    const both = readFileSync(log);
    for (let cut = first.length; cut <= both.length; cut++) {
      writeFileSync(log, both.subarray(0, cut));
      await appendReel(log, plainEntry('C'));
      const { entries, damaged } = await readReelLog(log);
      const whole = cut >= both.length - 1;
      expect(entries.map(({ reel }) => reel)).toEqual(whole ? ['A', 'B', 'C'] : ['A', 'C']);
      expect(damaged.map(({ line }) => line)).toEqual(whole || cut === first.length ? [] : [2]);
    }
  });

  it('a first record cut at any byte, or left as zeros, does not keep the next one out', async () => {
    await appendReel(log, plainEntry('A'));
    const first = readFileSync(log);
    for (let cut = 0; cut < first.length - 1; cut++)
      for (const left of [first.subarray(0, cut), Buffer.alloc(cut)]) {
        writeFileSync(log, left);
        await appendReel(log, plainEntry('B'));
        await appendReel(log, plainEntry('C'));
        expect(await reels()).toEqual(['B', 'C']);
      }
  });

  it('zeros left by a power loss are one damaged line', async () => {
    await appendReel(log, plainEntry('A'));
    writeFileSync(log, Buffer.alloc(5000), { flag: 'a' });
    await appendReel(log, plainEntry('B'));
    expect(await reels()).toEqual(['A', 'B']);
    expect((await readReelLog(log)).damaged).toMatchObject([{ line: 2 }]);
  });

  it('fields of a later version are kept', async () => {
    writeFileSync(log, `${JSON.stringify({ ...plainEntry('A'), weather: 'fog' })}\n`);
    expect((await readReelLog(log)).entries).toEqual([{ ...plainEntry('A'), weather: 'fog' }]);
  });

  it.each([
    ['"text"', 'is no reel record'],
    ['[1]', 'is no reel record'],
    ['{"version":1}', 'is no reel record: reel: is missing or of another kind'],
    ['{"version":"1","reel":"B"}', 'is no reel record: version: is missing or of another kind'],
    ['{"version":1,"reel":"B","recordedAt":"then"}', /recordedAt: is no time such as/],
  ])('says in words why %s is no record', async (line, what) => {
    await appendReel(log, plainEntry('A'));
    writeFileSync(log, `${line}\n`, { flag: 'a' });
    expect((await readReelLog(log)).damaged).toEqual([
      { line: 2, what: typeof what === 'string' ? what : (expect.stringMatching(what) as string) },
    ]);
  });

  it('a line beyond the bound is set aside without being kept in memory', async () => {
    await appendReel(log, plainEntry('A'));
    writeFileSync(log, `${'x'.repeat(longestRecord + 1)}\n`, { flag: 'a' });
    await appendReel(log, plainEntry('B'));
    expect(await reels()).toEqual(['A', 'B']);
  });

  it('follows a symbolic link', async () => {
    await appendReel(log, plainEntry('A'));
    symlinkSync(log, join(folder, 'link'));
    await appendReel(join(folder, 'link'), plainEntry('B'));
    expect(await reels()).toEqual(['A', 'B']);
  });

  it('clears the lock of a writer that died', async () => {
    writeFileSync(`${log}.lock`, `999999999 ${hostname()} gone`);
    await appendReel(log, plainEntry('A'));
    expect(readdirSync(folder)).toEqual(['reels.jsonl']);
  });

  it('waits for a writer that is alive', async () => {
    const lock = `${log}.lock`;
    writeFileSync(lock, `${process.pid} ${hostname()} mine`);
    let done = false;
    const append = appendReel(log, plainEntry('A')).then(() => (done = true));
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(done).toBe(false);
    expect(readFileSync(lock, 'utf8')).toContain('mine');
    rmSync(lock);
    await append;
    expect(await reels()).toEqual(['A']);
  });

  it('waits for another computer whose clock is hours behind, and clears its lock when nothing moves', async () => {
    const lock = `${log}.lock`;
    writeFileSync(lock, '1 another-computer first');
    utimesSync(lock, 0, 0);
    let done = false;
    const append = appendReel(log, plainEntry('A')).then(() => (done = true));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect([done, existsSync(lock)]).toEqual([false, true]);
    await append; // ten seconds later
    expect(await reels()).toEqual(['A']);
    expect(readdirSync(folder)).toEqual(['reels.jsonl']);
  });

  it('many appends at once in one process all arrive', async () => {
    const names = Array.from({ length: 40 }, (_, i) => `reel ${i}`);
    await Promise.all(names.map((name) => appendReel(log, plainEntry(name))));
    expect((await reels()).sort()).toEqual(names.sort());
  });
});

describe('refusals of the reel log', () => {
  it.each([
    ['a still', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13])],
    ['a look file', Buffer.from('{\n  "name": "Warm"\n}\n')],
    ['a look file in one line', Buffer.from('{"name":"Warm"}')],
    ['a LUT', Buffer.from('LUT_3D_SIZE 2\n0 0 0\n')],
    ['notes', Buffer.from('Reels in the attic')],
    ['a list', Buffer.from('[]\n')],
  ])('leaves %s as it is', async (_, bytes) => {
    writeFileSync(log, bytes);
    expect(await problemOf(appendReel(log, plainEntry('A')))).toContain('is no reel log');
    expect(readFileSync(log)).toEqual(bytes);
    expect(readdirSync(folder)).toEqual(['reels.jsonl']);
  });

  it('names every wrong field and writes nothing', async () => {
    const wrong = { ...plainEntry(''), recordedAt: 'yesterday', lamb: 'x' };
    const text = await problemOf(appendReel(log, wrong));
    expect(text).toMatch(/reel:.*\nrecordedAt:.*\n.*lamb/);
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([NaN, Infinity])('a difference of %d', async (mean) => {
    const entry = { ...plainEntry('A'), verify: { holds: true, mean, p95: 1 } };
    expect(await problemOf(appendReel(log, entry))).toContain('verify.mean');
  });

  it('a record beyond the bound', async () => {
    const stills = Array.from({ length: 100 }, () => ({ file: 'x'.repeat(1000), sha256: 'a'.repeat(64) }));
    expect(await problemOf(appendReel(log, { ...plainEntry('A'), stills }))).toContain('bytes');
  });

  it('a folder, a missing folder, a file in place of a folder', async () => {
    expect(await problemOf(appendReel(folder, plainEntry('A')))).toContain('is a folder');
    expect(await problemOf(appendReel(join(folder, 'no', 'log'), plainEntry('A')))).toContain(
      'does not exist',
    );
    writeFileSync(log, '');
    expect(await problemOf(appendReel(join(log, 'log'), plainEntry('A')))).toContain('does not exist');
    expect(await problemOf(readReelLog(folder))).toContain('is a folder');
    expect(await problemOf(readReelLog(join(folder, 'none')))).toContain('no such');
  });

  it.skipIf(process.getuid?.() === 0)('a read-only folder', async () => {
    mkdirSync(join(folder, 'locked'));
    chmodSync(join(folder, 'locked'), 0o500);
    expect(await problemOf(appendReel(join(folder, 'locked', 'log'), plainEntry('A')))).toContain(
      'may not be written',
    );
  });

  it('a file that is something else, and one that is too large', async () => {
    writeFileSync(log, 'no record\n'.repeat(2000));
    expect(await problemOf(readReelLog(log))).toContain('is no reel log');
    writeFileSync(log, Buffer.alloc(largestLog + 1, 0x20));
    expect(await problemOf(readReelLog(log))).toContain('larger than');
  });

  it('random bytes after a record cost neither it nor one that follows, and throw nothing else', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
        writeFileSync(log, recordLine(plainEntry('A')));
        writeFileSync(log, bytes, { flag: 'a' });
        await appendReel(log, plainEntry('B'));
        const read = await reels();
        expect([read[0], read.at(-1)]).toEqual(['A', 'B']);
      }),
      { seed: 3, numRuns: 100 },
    );
  });
});

/** RFC 4180 read by the book, character by character. */
function parseCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let [value, quoted] = ['', false];
  for (let i = 0; i < text.length; i++) {
    const [here, pair] = [text[i], text.slice(i, i + 2)];
    if (quoted && pair === '""') [value, i] = [`${value}"`, i + 1];
    else if (here === '"') quoted = !quoted;
    else if (!quoted && here === ',') [value] = ['', rows.at(-1)?.push(value)];
    else if (!quoted && pair === '\r\n') {
      rows.at(-1)?.push(value);
      rows.push([]);
      [value, i] = ['', i + 1];
    } else value += here;
  }
  return rows.slice(0, -1);
}

describe('reel log as CSV', () => {
  it('every row has the cells of the heading, and they read back', () => {
    const [heading, full, plain] = parseCsv(reelLogCsv([fullEntry, plainEntry('B')]));
    const cellOf = (row: string[], name: string) => row[heading.indexOf(name)];
    expect(full).toHaveLength(heading.length);
    expect(plain).toHaveLength(heading.length);
    expect(cellOf(full, 'reel')).toBe(fullEntry.reel);
    expect(cellOf(full, 'stock notes')).toBe(fullEntry.stockNotes);
    expect(cellOf(full, 'cause')).toBe('applied twice');
    expect(cellOf(plain, 'look file')).toBe('');
  });

  it('hands no formula to a spreadsheet', () => {
    const [heading, row] = parseCsv(reelLogCsv([fullEntry]));
    expect(row[heading.indexOf('notes')]).toBe("'=1+1");
    expect(row[heading.indexOf('cube file')]).toBe("'-odd name.cube");
  });

  it('any words read back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 30 }), (reel) => {
        const [, [first]] = parseCsv(reelLogCsv([plainEntry(reel)]));
        expect(first.replace(/^'(?=[=+\-@\t\r])/, '')).toBe(reel);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});

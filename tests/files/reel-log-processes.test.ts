import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { appendReel, readReelLog } from '../../src/files/reel-log.js';
import { seededRandom } from '../../src/maths/random.js';
import { plainEntry } from './reel-log-entries.js';

let folder: string;
let log: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'reel-log-'));
  log = join(folder, 'reels.jsonl');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const built = pathToFileURL(resolve(import.meta.dirname, '../../dist/src/files/reel-log.js')).href;

/** A writer of its own process: prints the name of every reel that it was told is on record, then why it stopped. */
const writer = `
  const [file, name, times, user] = process.argv.slice(1);
  const { appendReel } = await import(${JSON.stringify(built)});
  if (user !== undefined) process.setuid(Number(user));
  try {
    for (let i = 0; i < Number(times); i++) {
      const reel = name + ' ' + i;
      await appendReel(file, { version: 1, reel, recordedAt: '2026-03-01T19:30:00Z', notes: 'n'.repeat(i % 700) });
      process.stdout.write(reel + '\\n');
    }
  } catch (error) {
    process.stdout.write('stopped: ' + error.name + ': ' + error.message + '\\n');
  }
`;
const args = (file: string, name: string, times: number, user?: number) => [
  '--input-type=module',
  '-e',
  writer,
  '--',
  file,
  name,
  String(times),
  ...(user === undefined ? [] : [String(user)]),
];

/** Starts a writer; `killAfterMs`, counted from its first line, ends it without warning, as a power loss would. */
function startWriter(name: string, times: number, killAfterMs?: number): Promise<string[]> {
  const child = spawn(process.execPath, args(log, name, times));
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
  if (killAfterMs !== undefined)
    child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), killAfterMs));
  return new Promise((done) => child.on('close', () => done(said.split('\n').slice(0, -1))));
}

async function reelsOnRecord(): Promise<string[]> {
  const { entries, damaged } = await readReelLog(log);
  expect(damaged).toEqual([]);
  return entries.map(({ reel }) => reel);
}

describe('reel log with several processes', () => {
  it('three writers at once: every line arrives once and whole', async () => {
    const said = await Promise.all(['A', 'B', 'C'].map((name) => startWriter(name, 60)));
    expect(said.map((lines) => lines.length)).toEqual([60, 60, 60]);
    expect((await reelsOnRecord()).sort()).toEqual(said.flat().sort());
    expect(readdirSync(folder)).toEqual(['reels.jsonl']);
  });

  it('a writer killed at any moment: what it was told is on record stays, and the next one writes on', async () => {
    const random = seededRandom(5);
    const told: string[] = [];
    for (let round = 0; round < 8; round++)
      told.push(...(await startWriter(`R${round}`, 1e6, 100 * random())));
    await appendReel(log, plainEntry('after'));
    const onRecord = await reelsOnRecord();
    expect(told.length).toBeGreaterThan(0);
    expect(told.filter((reel) => !onRecord.includes(reel))).toEqual([]);
    expect(new Set(onRecord).size).toBe(onRecord.length);
    expect(onRecord.at(-1)).toBe('after');
  });

  it.skipIf(process.platform === 'win32')(
    'a file that may not grow: nothing is torn, and the writer says so',
    async () => {
      const limited = `trap '' XFSZ; ulimit -f 8; exec "$0" "$@"`;
      const run = spawnSync('bash', ['-c', limited, process.execPath, ...args(log, 'A', 1e6)], {
        encoding: 'utf8',
      });
      const said = run.stdout.split('\n').slice(0, -1);
      expect(said.at(-1)).toBe(
        'stopped: InputError: the file may not grow any further; nothing was put on record',
      );
      expect(await reelsOnRecord()).toEqual(said.slice(0, -1));
      expect(readFileSync(log, 'utf8').endsWith('}\n')).toBe(true);
    },
  );

  it('a full disk: nothing is torn, and the writer says so', async (test) => {
    const disk = join(folder, 'disk');
    mkdirSync(disk);
    test.skip(
      spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', disk]).status !== 0,
      'may not mount',
    );
    try {
      log = join(disk, 'reels.jsonl');
      const said = await startWriter('A', 1e6);
      expect(said.at(-1)).toBe('stopped: InputError: the disk is full; nothing was put on record');
      expect(said.length).toBeGreaterThan(10);
      expect(await reelsOnRecord()).toEqual(said.slice(0, -1));
      expect(readdirSync(disk)).toEqual(['reels.jsonl']);
    } finally {
      spawnSync('umount', [disk]);
    }
  });

  it.skipIf(process.getuid?.() !== 0)('a folder of somebody else: refused, nothing written', () => {
    const nobody = 65534;
    const run = spawnSync(process.execPath, args(log, 'A', 1, nobody), { encoding: 'utf8' });
    expect(run.stdout).toBe('stopped: InputError: may not be written\n');
    expect(readdirSync(folder)).toEqual([]);
  });
});

import { spawnSync } from 'node:child_process';
import { closeSync, openSync, readFileSync, truncateSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { chunk, png } from '../stills/fixtures.js';

const folder = temporaryFolder();

/** A process that reads one file, and says what came of it and how much memory it ever had. */
const readOne = `
  const [reader, file] = process.argv.slice(1);
  const built = (path) => import(${JSON.stringify(`${pathToFileURL(join(projectRoot, 'dist/src')).href}/`)} + path);
  const readers = {
    lut: async () => (await built('cli/load.js')).loadLut(file),
    look: async () => (await built('cli/load.js')).loadLook(file),
    still: async () => (await built('stills/read-still.js')).readStill(file),
    log: async () => (await built('files/reel-log.js')).readReelLog(file),
  };
  const said = await readers[reader]().then(() => 'read', (error) => error.name + ': ' + error.message);
  process.stdout.write(JSON.stringify({ said, residentMiB: process.resourceUsage().maxRSS / 1024 }));
`;
/** Nothing here takes more than seconds; what takes this long hangs. */
const patienceMs = 100_000;

/** A file of many equal pieces, written without being held in memory. */
function pieces(path: string, head: string, piece: string, times: number, tail = ''): void {
  const file = openSync(path, 'w');
  writeSync(file, head);
  const block = piece.repeat(1000);
  for (let left = times; left > 0; left -= 1000) writeSync(file, left >= 1000 ? block : piece.repeat(left));
  writeSync(file, tail);
  closeSync(file);
}

/** A file of zeros that takes no room on the disk. */
function hole(path: string, bytes: number): void {
  writeFileSync(path, '');
  truncateSync(path, bytes);
}

/** A grey PNG of 120 megapixels in half a megabyte. */
function largestGrey(path: string): void {
  const [width, height] = [12_000, 10_000];
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = 8;
  const data = deflateSync(Buffer.alloc((width + 1) * height), { level: 1 });
  const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
  const parts = [signature, chunk('IHDR', header), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))];
  writeFileSync(path, Buffer.concat(parts));
}

const tooWide = png({ width: 20_000, height: 6_001, bits: 8, colourType: 0, rows: [0] });
const record = (notes: string) =>
  `${JSON.stringify({ version: 1, reel: 'A', recordedAt: '2026-03-01T19:30:00Z', notes })}\n`;
const rows = 129 ** 3;

interface Case {
  readonly reader: 'lut' | 'look' | 'still' | 'log';
  readonly file: string;
  readonly make: (path: string) => void;
  readonly said: RegExp;
  /** The bound that DEVELOPERS.md states for the reader. */
  readonly residentMiB: number;
}

const cases: Record<string, Case> = {
  'a .cube of 129 points a side': {
    reader: 'lut',
    file: 'a.cube',
    make: (path) => pieces(path, 'LUT_3D_SIZE 129\n', '0 0 0\n', rows),
    said: /^read$/,
    residentMiB: 300,
  },
  'a .cube that claims 256 points and chats for ever': {
    reader: 'lut',
    file: 'b.cube',
    make: (path) => pieces(path, 'LUT_3D_SIZE 256\n0 0 0\n', `#${'x'.repeat(200)}\n`, 200_000),
    said: /more than 16777216 bytes of comments/,
    residentMiB: 300,
  },
  'a .clf of 300 MB': {
    reader: 'lut',
    file: 'c.clf',
    make: (path) => hole(path, 300e6),
    said: /larger than 134217728 bytes/,
    residentMiB: 450,
  },
  'a .clf of numbers that belong to nothing': {
    reader: 'lut',
    file: 'd.clf',
    make: (path) => pieces(path, '<ProcessList compCLFversion="3">', '0 0 0 0 ', 16e6),
    said: /ends inside of ProcessList/,
    residentMiB: 450,
  },
  'a look file of 3 GB': {
    reader: 'look',
    file: 'e.json',
    make: (path) => hole(path, 3e9),
    said: /is too large/,
    residentMiB: 200,
  },
  'a look file of brackets, as large as any may be': {
    reader: 'look',
    file: 'f.json',
    make: (path) => writeFileSync(path, '['.repeat(3_999_999)),
    said: /InputError/,
    residentMiB: 200,
  },
  'a still that says it is larger than any': {
    reader: 'still',
    file: 'g.png',
    make: (path) => writeFileSync(path, tooWide),
    said: /20000 x 6001 pixels/,
    residentMiB: 400,
  },
  'a still of 120 megapixels in half a megabyte': {
    reader: 'still',
    file: 'h.png',
    make: largestGrey,
    said: /^read$/,
    residentMiB: 400,
  },
  'a reel log of one line of 300 MB': {
    reader: 'log',
    file: 'i.jsonl',
    make: (path) => hole(path, 300e6),
    said: /larger than 67108864 bytes/,
    residentMiB: 300,
  },
  'a reel log as large as any may be': {
    reader: 'log',
    file: 'j.jsonl',
    make: (path) => pieces(path, '', record('n'.repeat(560)), 105_000),
    said: /^read$/,
    residentMiB: 300,
  },
};

const stated = readFileSync(join(projectRoot, 'DEVELOPERS.md'), 'utf8');

describe('memory of every reader stays within what DEVELOPERS.md states', () => {
  it.each(Object.entries(cases))(
    '%s',
    (_, { reader, file, make, said, residentMiB }) => {
      const path = join(folder, file);
      make(path);
      // JavaScript's own heap is kept small too: a reader that gathers objects ends by that.
      const args = ['--max-old-space-size=128', '--input-type=module', '-e', readOne, '--', reader, path];
      const run = spawnSync(process.execPath, args, { encoding: 'utf8', timeout: patienceMs });
      expect(run.stderr).toBe('');
      const answer = JSON.parse(run.stdout) as { said: string; residentMiB: number };
      process.stdout.write(`${file}: ${answer.residentMiB.toFixed(0)} of ${residentMiB} MiB\n`);
      expect(answer.said).toMatch(said);
      expect(answer.residentMiB).toBeLessThan(residentMiB);
      expect(stated).toMatch(
        new RegExp(
          `^\\| ${reader === 'lut' ? file.replace(/.*\./, '.') : reader}.*\\b${residentMiB} MiB`,
          'm',
        ),
      );
    },
    patienceMs + 20_000,
  );
});

import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { renderDemoStill } from '../../src/demo/index.js';
import { type ReelEntry, readReelLog } from '../../src/files/reel-log.js';
import { encodeStill } from '../../src/stills/write-still.js';
import { builtMain, gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const log = (...args: string[]) => gatelight(['log', ...args], folder);
const look = join(projectRoot, 'looks/pink-reel.json');
const otherLook = join(projectRoot, 'looks/xenon-hall.json');

gatelight(['build', look, '-o', at('pink.cube'), '--size', '5']);
gatelight(['build', look, '-o', at('pink-9.cube'), '--size', '9']);
gatelight(['build', look, '-o', at('bare.cube'), '--size', '5', '--plain']);
const verdict = { holds: false, mean: 3.25, p95: 7.5, tried: [], cause: { words: 'applied twice', rms: 3 } };
writeFileSync(at('verdict.json'), JSON.stringify(verdict));

const jsonOf = (ended: { stdout: string }) => JSON.parse(ended.stdout) as unknown;

describe('gatelight log', () => {
  it('puts reels on record, with the look that the LUT file names, and shows them', async () => {
    const hard = 'Harbour "3", fête\n=1+1';
    const said = log(
      'add',
      hard,
      '--cube',
      'pink.cube',
      '--still',
      'verdict.json',
      '--verify',
      'verdict.json',
    );
    expect(said).toMatchObject({ status: 0, stderr: '' });
    expect(log('add', 'Other', '--cube', 'pink-9.cube', '--lamp', '12 V').status).toBe(0);
    const { entries, damaged } = await readReelLog(at('reels.jsonl'));
    expect(damaged).toEqual([]);
    expect(entries).toMatchObject([
      {
        reel: hard,
        look: { name: 'Pink reel, cyan given back' },
        cube: { file: 'pink.cube' },
        stills: [{ file: 'verdict.json' }],
        verify: { holds: false, mean: 3.25, p95: 7.5, cause: 'applied twice' },
      },
      { reel: 'Other', lamp: '12 V', cube: { file: 'pink-9.cube' } },
    ]);
    expect(jsonOf(log('show', '--json'))).toEqual(entries);
    const shown = log('show', '--reel', 'HARBOUR').stdout;
    expect(shown).toMatch(/^Harbour "3", fête =1\+1, 20\d\d-.*\n {2}look .*Pink reel/);
    expect(shown).toContain('NOT as the file says, mean 3.25, 95 % within 7.50 CIEDE2000: applied twice');
    expect(shown).toMatch(/reels\.jsonl: 1 reel\.\n$/);
  });

  it('takes what verify says of two stills', async () => {
    const plain = renderDemoStill('tram', { width: 240, height: 180, age: 'pink' });
    writeFileSync(at('plain.png'), (await encodeStill('plain.png', plain)).bytes);
    for (const times of [1, 2]) {
      const [from, to] = times === 1 ? ['plain.png', 'burnt.png'] : ['burnt.png', 'twice.png'];
      expect(gatelight(['apply', 'pink-9.cube', from, '-o', to], folder).status).toBe(0);
    }
    for (const burnt of ['burnt.png', 'twice.png']) {
      const said = gatelight(['verify', 'plain.png', burnt, 'pink-9.cube', '--json'], folder);
      writeFileSync(at('said.json'), said.stdout);
      expect(log('add', burnt, '--log', 'verified.jsonl', '--verify', 'said.json').stderr).toBe('');
    }
    const { entries } = await readReelLog(at('verified.jsonl'));
    expect(entries).toMatchObject([{ verify: { holds: true } }, { verify: { holds: false } }]);
    expect(entries[1].verify?.cause).toMatch(/twice/);
  });

  it('says which look made a file, and which reels were recorded with it', () => {
    const said = jsonOf(log('origin', 'pink.cube', '--json')) as Record<string, unknown>;
    const [first, second] = jsonOf(log('show', '--json')) as ReelEntry[];
    expect(said).toMatchObject({ size: 5, kind: '3d', look: first.look, sha256: first.cube?.sha256 });
    expect(said).toMatchObject({ sameFile: [first], sameLook: [second] });
    const bare = log('origin', 'bare.cube', '--log', 'reels.jsonl');
    expect(bare.status).toBe(1);
    expect(bare.stdout).toMatch(/look +the file does not say\n/);
    expect(log('origin', 'pink.cube').stdout).toMatch(/^takes +srgb bt709 full\ngives +srgb bt709 full$/m);
  });

  it('says of a way back which file it undoes', () => {
    // pink.cube is small: much of it does not come back, and the exit code says so
    expect(gatelight(['undo', 'pink.cube', '-o', 'back.cube', '--size', '5'], folder).stderr).toBe('');
    const { stdout, status } = log('origin', 'back.cube');
    const [first] = jsonOf(log('show', '--json')) as ReelEntry[];
    expect(stdout).toMatch(/^undoes +\S/);
    expect(stdout).toContain(first.cube?.sha256);
    expect(status).toBe(0);
    expect(log('rebuild', 'back.cube', look).stdout).toMatch(/NOT the same: it was not built of a look/);
  });

  it('builds a file again, every byte the same, or says why not', () => {
    const same = log('rebuild', 'pink.cube', look, '-o', 'again.cube');
    expect(same).toMatchObject({ status: 0, stderr: '' });
    expect(same.stdout).toContain('every byte the same');
    expect(readFileSync(at('again.cube'))).toEqual(readFileSync(at('pink.cube')));
    expect(log('rebuild', 'bare.cube', look).status).toBe(0);

    const wrongLook = log('rebuild', 'pink.cube', otherLook, '-o', 'wrong.cube');
    expect(wrongLook.status).toBe(1);
    expect(wrongLook.stdout).toMatch(/the look file is not the one that made it.*values of the table differ/);
    expect(log('rebuild', 'bare.cube', otherLook).stdout).toMatch(
      /does not say which look made it, and this one/,
    );
    const text = readFileSync(at('pink.cube'), 'utf8');
    writeFileSync(at('older.cube'), text.replace(/gatelight \S+/, 'gatelight 0.0.1'));
    expect(log('rebuild', 'older.cube', look).stdout).toContain('made with gatelight 0.0.1, and this is');
    writeFileSync(at('crlf.cube'), text.replaceAll('\n', '\r\n'));
    expect(log('rebuild', 'crlf.cube', look).stdout).toMatch(/changed since: the table is the same/);
    expect(readdirSync(folder)).not.toContain('wrong.cube');
  });

  it('exports CSV that a spreadsheet reads as words', () => {
    const [heading] = log('export').stdout.split('\r\n');
    expect(heading.split(',').slice(0, 3)).toEqual(['reel', 'recorded at', 'gauge']);
    writeFileSync(at('formulas.jsonl'), '');
    for (const reel of ['=1+1', '+1', '@A1'])
      expect(log('add', reel, '--log', 'formulas.jsonl', '--notes=-1,"x"\ny').status).toBe(0);
    const { stdout } = log('export', '--log', 'formulas.jsonl', '-o', 'formulas.csv');
    expect(stdout).toBe('formulas.csv: 3 reels.\n');
    const rows = readFileSync(at('formulas.csv'), 'utf8').split('\r\n').slice(1);
    expect(rows.map((row) => row.slice(0, row.indexOf(',')))).toEqual(["'=1+1", "'+1", "'@A1", '']);
    expect(rows[0]).toMatch(/,"'-1,""x""\ny"$/);
  });

  it.each<[string, string[], RegExp]>([
    [
      'no such log',
      ['show', '--log', 'none.jsonl'],
      /none\.jsonl: there is no such reel log\. gatelight log add begins one/,
    ],
    ['a folder as log', ['add', 'A', '--log', '.'], /is a folder/],
    ['another file as log', ['add', 'A', '--log', 'pink.cube'], /^gatelight: pink\.cube: is no reel log/],
    [
      'another look than the file names',
      ['add', 'A', '--cube', 'pink.cube', '--look', otherLook],
      /is not the look/,
    ],
    ['a verdict that is none', ['add', 'A', '--verify', 'pink.cube'], /holds no result of verify/],
    ['a still that is missing', ['add', 'A', '--still', 'none.png'], /none\.png: no such file/],
    [
      'a time that is none',
      ['add', 'A', '--recorded-at', 'yesterday'],
      /^gatelight: --recorded-at: "yesterday" cannot/,
    ],
    ['no label', ['add', ''], /reel: is empty/],
    ['a log as output', ['export', '-o', 'reels.jsonl', '--force'], /a source is never overwritten/],
    ['no sub-command', ['remove'], /./],
  ])('refuses %s in plain words, and writes nothing', (_, args, words) => {
    const before = readFileSync(at('reels.jsonl'));
    const ended = log(...args);
    expect(isPlainRefusal(ended), `${ended.status} ${ended.stderr}`).toBe(true);
    expect(ended.stderr).toMatch(words);
    expect(readFileSync(at('reels.jsonl'))).toEqual(before);
  });
});

describe('gatelight log when much goes wrong at once', () => {
  const adding = (reel: string, file: string) =>
    spawn(process.execPath, [builtMain, 'log', 'add', reel, '--log', file], { cwd: folder, stdio: 'ignore' });
  const ends = (child: ReturnType<typeof spawn>) =>
    new Promise<number | null>((done) => child.on('close', (code) => done(code)));

  it('two writers at once, others killed in the middle: what was reported is on record, whole', async () => {
    const file = at('busy.jsonl');
    const names = Array.from({ length: 12 }, (_, i) => `reel ${i}`);
    const codes = await Promise.all(
      names.map((name, i) => {
        const child = adding(name, file);
        // Every third is killed without warning at some moment of its run, as by a power loss.
        if (i % 3 === 2) setTimeout(() => child.kill('SIGKILL'), 250 * i);
        return ends(child);
      }),
    );
    const { entries, damaged } = await readReelLog(file);
    const onRecord = entries.map(({ reel }) => reel);
    expect(damaged).toEqual([]);
    expect(new Set(onRecord).size).toBe(onRecord.length);
    for (const [i, name] of names.entries()) if (codes[i] === 0) expect(onRecord).toContain(name);
    expect(codes.filter((code) => code === 0).length).toBeGreaterThanOrEqual(8);
    expect(gatelight(['log', 'add', 'after', '--log', file]).status).toBe(0);
    expect(readdirSync(folder).filter((name) => name.startsWith('busy.jsonl'))).toEqual(['busy.jsonl']);
  });

  it.skipIf(process.platform === 'win32')('a log that may not grow stays as it was', () => {
    const file = at('limited.jsonl');
    writeFileSync(file, readFileSync(at('reels.jsonl')));
    const before = readFileSync(file);
    const limited = `trap '' XFSZ; ulimit -f 1; exec "$0" "$@"`;
    const notes = 'n'.repeat(1900);
    const args = ['log', 'add', 'A', '--log', file, '--notes', notes];
    const ended = spawnSync('bash', ['-c', limited, process.execPath, builtMain, ...args], {
      encoding: 'utf8',
    });
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain('may not grow any further; nothing was put on record');
    expect(readFileSync(file)).toEqual(before);
  });

  it('a full disk costs no reel that is on record', (test) => {
    const disk = at('disk');
    mkdirSync(disk);
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=16k', 'tmpfs', disk]).status === 0;
    test.skip(!mounted, 'a small disk may be mounted by root alone');
    try {
      const file = join(disk, 'reels.jsonl');
      expect(log('add', 'first', '--log', file).status).toBe(0);
      writeFileSync(join(disk, 'filling'), Buffer.alloc(8192));
      const before = readFileSync(file);
      const ended = log(
        'add',
        'second',
        '--log',
        file,
        '--notes',
        'n'.repeat(1990),
        '--stock',
        's'.repeat(1990),
        '--lamp',
        'l'.repeat(1990),
      );
      expect(isPlainRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toContain('the disk is full');
      expect(readFileSync(file)).toEqual(before);
      expect(readdirSync(disk).sort()).toEqual(['filling', 'reels.jsonl']);
    } finally {
      spawnSync('umount', [disk]);
    }
  });
});

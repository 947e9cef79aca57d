import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
let folder: string;
const at = (...names: string[]) => join(folder, ...names);

/** Runs a program in the empty folder. */
function run(program: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(program, args, { cwd: at('home'), encoding: 'utf8' });
  return { status, stdout, stderr };
}
const installed = (...args: string[]) => run(at('home/node_modules/.bin/gatelight'), ...args);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gatelight-package-'));
  mkdirSync(at('home'));
  const packed = execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [{ filename }] = JSON.parse(packed) as [{ filename: string }];
  writeFileSync(at('home/package.json'), '{ "private": true }');
  // What `npm ci` brought a moment ago lies in npm's store: a slow line is hardly needed.
  const quickly = ['--prefer-offline', '--no-audit', '--no-fund', '--omit=dev'];
  execFileSync('npm', ['install', ...quickly, at(filename)], { cwd: at('home'), stdio: 'pipe' });
}, 600_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the package, installed from its tarball in an empty folder', () => {
  it('runs: build, check, preview, apply, undo, log', () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect(installed('--version').stdout.trim()).toBe(version);
    const look = 'node_modules/gatelight/looks/warm-stock-and-lamp.json';
    const still = at('home/still.png');
    writeFileSync(still, readFileSync(join(root, 'tests/hostile/corpus/still/grey-16.png')));
    const steps = [
      ['build', look, '-o', 'warm.cube'],
      ['check', 'warm.cube', '--against', look],
      ['preview', 'warm.cube', 'still.png', '-o', 'seen.png'],
      ['apply', 'warm.cube', 'still.png', '-o', 'out.png'],
      ['apply', 'warm.cube', 'still.png', 'seen.png', '-o', 'graded', '--jobs', '2'],
      ['undo', 'warm.cube', '-o', 'back.cube'],
      ['log', 'add', 'A', '--cube', 'warm.cube'],
      ['log', 'rebuild', 'warm.cube', look],
    ];
    for (const step of steps)
      expect(installed(...step), step.join(' ')).toMatchObject({ status: 0, stderr: '' });
    for (const file of ['warm.cube', 'seen.png', 'out.png', 'reels.jsonl'])
      expect(existsSync(at('home', file))).toBe(true);
  });

  it('is a library too', () => {
    const use = `
      import { buildLook, lookSchema, lutFormats } from 'gatelight';
      const look = lookSchema.parse({ name: 'A', print: { exposureStops: -1 } });
      console.log(buildLook(look, { size: 2 }, { version: '1', sha256: () => '' }).text.split('\\n')[0], Object.keys(lutFormats).length);`;
    expect(run(process.execPath, '--input-type=module', '-e', use)).toMatchObject({
      status: 0,
      stdout: 'TITLE "A" 2\n',
    });
  });

  it('brings its manual page, which has no fault', () => {
    const page = at('home/node_modules/gatelight/dist/man/gatelight.1');
    const { status, stdout, stderr } = spawnSync('man', ['--warnings', '-E', 'UTF-8', '-l', page], {
      encoding: 'utf8',
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('gatelight log rebuild');
    const groff = spawnSync('groff', ['-ww', '-man', '-Tutf8', page], { encoding: 'utf8' });
    expect(groff).toMatchObject({ status: 0, stderr: '' });
  });

  it('completes in zsh and fish', () => {
    for (const shell of ['zsh', 'fish']) {
      writeFileSync(at(`completion.${shell}`), installed('completion', shell).stdout);
      expect(spawnSync(shell, ['-n', at(`completion.${shell}`)], { encoding: 'utf8' })).toMatchObject({
        status: 0,
        stderr: '',
      });
    }
    const fish = (line: string) => {
      const asked = `source ${at('completion.fish')}; complete -C '${line}'`;
      return spawnSync('fish', ['-c', asked], { encoding: 'utf8' })
        .stdout.split('\n')
        .map((row) => row.split('\t')[0]);
    };
    expect(fish('gatelight lo')).toContain('log');
    expect(fish('gatelight log re')).toContain('rebuild');
    expect(fish('gatelight log add --ga')).toContain('--gauge');
    expect(fish('gatelight check --siz')).not.toContain('--size');
    expect(fish('gatelight apply --flip ')).toEqual(expect.arrayContaining(['h', 'hv', 'v']));
  });
});

import { spawn } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { renderDemoStill } from '../../src/demo/index.js';
import { readReelLog } from '../../src/files/reel-log.js';
import { seededRandom } from '../../src/maths/random.js';
import { encodeStill } from '../../src/stills/write-still.js';
import { builtMain, projectRoot, temporaryFolder } from '../cli/gatelight.js';

const folder = temporaryFolder();
const seed = Number(process.env.GATELIGHT_FUZZ_SEED ?? 1974);
/** Moments a command is interrupted at, spread over its run: a few in each run of the tests, many where time is given. */
const moments = Number(process.env.GATELIGHT_INTERRUPTIONS ?? 4);

const inputs = join(folder, 'inputs');
mkdirSync(join(inputs, 'frames'), { recursive: true });
cpSync(join(projectRoot, 'looks/xenon-hall.json'), join(inputs, 'hall.json'));
const still = renderDemoStill('tram', { width: 240, height: 180, age: 'pink' });
const { bytes } = await encodeStill('still.png', still);
for (let i = 0; i < 12; i++) writeFileSync(join(inputs, `frames/${i}.png`), bytes);

const commands: Record<string, readonly string[]> = {
  build: ['build', 'hall.json', '-o', 'out.cube', '--size', '65'],
  apply: ['apply', 'hall.json', 'frames', '-o', 'out', '--jobs', '3'],
  preview: ['preview', 'hall.json', 'frames/0.png', '-o', 'seen.png'],
  undo: ['undo', 'kept.cube', '-o', 'back.cube', '--still', 'frames/0.png', '--picture', 'lost.png'],
  verify: ['verify', 'frames/0.png', 'frames/1.png', 'hall.json', '--picture', 'verdict.png'],
  measure: ['measure', 'frames/0.png', '-o', 'reel.json', '--report', 'report.png'],
  log: [
    'log',
    'add',
    'A',
    '--cube',
    'kept.cube',
    '--still',
    'frames/1.png',
    '--recorded-at',
    '2026-03-01T19:30:00Z',
  ],
};

interface Run {
  readonly folder: string;
  readonly signal: NodeJS.Signals | null;
  readonly milliseconds: number;
}

/** Runs a command in a folder of its own, interrupted after some time as by Ctrl-C. */
function run(args: readonly string[], interruptAfterMs?: number): Promise<Run> {
  const cwd = mkdtempSync(join(folder, 'run-'));
  cpSync(inputs, cwd, { recursive: true });
  writeFileSync(join(cwd, 'kept.cube'), `LUT_3D_SIZE 2\n${'0 0 0\n'.repeat(8)}`);
  const began = performance.now();
  const child = spawn(process.execPath, [builtMain, ...args], { cwd, stdio: 'ignore' });
  if (interruptAfterMs !== undefined) setTimeout(() => child.kill('SIGINT'), interruptAfterMs);
  return new Promise((done) =>
    child.on('close', (_, signal) => done({ folder: cwd, signal, milliseconds: performance.now() - began })),
  );
}

/** Every file below a folder, hidden ones too. */
const filesOf = (path: string): string[] =>
  readdirSync(path, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(path, name)).isFile())
    .sort();

describe('Ctrl-C at any moment leaves no half file and nothing temporary', () => {
  it.each(Object.entries(commands))(
    '%s',
    async (name, args) => {
      const whole = await run(args);
      const expected = filesOf(whole.folder);
      const random = seededRandom(seed);
      let interrupted = 0;
      for (let i = 0; i < moments; i++) {
        const moment = (whole.milliseconds * (i + random())) / moments;
        const ended = await run(args, moment);
        if (ended.signal === 'SIGINT') interrupted++;
        const context = `seed ${seed}, after ${moment.toFixed(0)} ms`;
        for (const file of filesOf(ended.folder)) {
          expect(expected, context).toContain(file);
          const same = readFileSync(join(ended.folder, file)).equals(readFileSync(join(whole.folder, file)));
          expect(same, `${file}, ${context}`).toBe(true);
        }
        if (name === 'log' && filesOf(ended.folder).includes('reels.jsonl'))
          expect((await readReelLog(join(ended.folder, 'reels.jsonl'))).damaged).toEqual([]);
        rmSync(ended.folder, { recursive: true });
      }
      process.stdout.write(`${name}: interrupted ${interrupted} times of ${moments}, seed ${seed}\n`);
      expect(interrupted).toBeGreaterThan(0);
    },
    300_000,
  );
});

// The figures of the main job, printed beside their targets: how near a table comes to its look, how long building takes.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { ciede2000Run, labRun } from '../../src/colour/difference.js';
import { signalsOf, signalToXyz } from '../../src/jobs/signal.js';
import { compileLook } from '../../src/look/compile-look.js';
import { randomFilmCodes } from '../../src/look/film-codes.js';
import type { Look } from '../../src/look/look-schema.js';
import { readLook } from '../../src/look/read-look.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { percentile } from '../../src/maths/percentile.js';
import { seededRandom } from '../../src/maths/random.js';

const root = join(import.meta.dirname, '../../../..');
const looks = readdirSync(join(root, 'looks')).sort();
const loaded = (file: string): Look => readLook(readFileSync(join(root, 'looks', file), 'utf8'), file);

/** CIEDE2000 of table against exact look, over random code values in the film's gamut. */
function distance(look: Look, size: number): Float64Array {
  const exact = compileLook(look);
  const codes = randomFilmCodes(look, 20_000, seededRandom(20));
  const count = codes.length / 3;
  const [through, direct] = [codes.slice(), codes.slice()];
  sampleLut(sampleLattice(exact, size))(through, count);
  exact(direct, count);
  const toXyz = signalToXyz(signalsOf(look).output);
  for (const colours of [through, direct]) {
    toXyz(colours, count);
    labRun(colours, count, [0.95047, 1, 1.08883]);
  }
  const differences = new Float64Array(count);
  ciede2000Run(through, direct, count, differences);
  return differences;
}

const median = (times: number[]) => times.sort((a, b) => a - b)[times.length >> 1];

function seconds(work: () => void, runs: number): number {
  return median(
    Array.from({ length: runs }, () => {
      const start = performance.now();
      work();
      return (performance.now() - start) / 1000;
    }),
  );
}

const row = (...cells: (string | number)[]) =>
  process.stdout.write(
    `${cells.map((cell, i) => (i === 0 ? String(cell).padEnd(32) : String(cell).padStart(12))).join('')}\n`,
  );

/** Whole process: start, read, build, write. */
function wholeProcess(file: string, runs: number): number {
  const folder = mkdtempSync(join(tmpdir(), 'gatelight-bench-'));
  const main = join(root, 'dist/src/cli/main.js');
  const build = () =>
    spawnSync(process.execPath, [
      main,
      'build',
      join(root, 'looks', file),
      '-o',
      join(folder, 'x.cube'),
      '--force',
    ]);
  if (build().status !== 0) throw new Error(`gatelight build ${file} failed: run npm run build first`);
  const time = seconds(build, runs);
  rmSync(folder, { recursive: true });
  return time;
}

const quick = process.argv.includes('--quick');
const runs = quick ? 1 : 5;
row(`Node ${process.version}, ${cpus()[0].model}`);
row('look', 'mean dE00', '99 %', '33 pt, s', '65 pt, s', 'process, s');
row('target', '<= 0.15', '<= 0.6', '<= 0.5', '<= 3', '<= 1');
let missed = 0;
for (const file of looks) {
  const look = loaded(file);
  const differences = distance(look, 33);
  const mean = differences.reduce((sum, value) => sum + value, 0) / differences.length;
  const p99 = percentile(differences, 0.99);
  const exact = compileLook(look);
  const [t33, t65] = [33, 65].map((size) => seconds(() => sampleLattice(exact, size), runs));
  const whole = wholeProcess(file, runs);
  if (mean > 0.15 || p99 > 0.6) missed++;
  row(file, mean.toFixed(3), p99.toFixed(3), t33.toFixed(3), t65.toFixed(3), whole.toFixed(3));
}
if (missed > 0) {
  process.stdout.write(`${missed} looks miss their colour target\n`);
  process.exitCode = 1;
}

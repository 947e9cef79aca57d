// npm run bench -- [--json] [--quick] [PART...]: how fast the program is, beside others, in one session.
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isMet, ratiosOf } from './figures.js';
import { machineLines } from './machine.js';
import { applyPart } from './parts/apply.js';
import { buildPart } from './parts/build.js';
import { clipsPart } from './parts/clips.js';
import { coloursPart } from './parts/colours.js';
import { cubeTextPart } from './parts/cube-text.js';
import { exactnessPart } from './parts/exactness.js';
import { framesPart } from './parts/frames.js';
import { processesPart } from './parts/processes.js';
import { speedPart } from './parts/speed.js';
import { threadsPart } from './parts/threads.js';
import { root } from './project.js';
import { markdownReport, type Measured, plainTable } from './report.js';
import { findFfmpeg } from './rivals/ffmpeg.js';
import { findOpenColorIO } from './rivals/opencolorio.js';
import type { Part, Setting } from './setting.js';

const parts = {
  exactness: exactnessPart,
  colours: coloursPart,
  apply: applyPart,
  threads: threadsPart,
  build: buildPart,
  text: cubeTextPart,
  processes: processesPart,
  frames: framesPart,
  clips: clipsPart,
  speed: speedPart,
} satisfies Record<string, Part>;
type PartName = keyof typeof parts;
const partNames = Object.keys(parts) as PartName[];

/** Parts whose figures do not hang on the machine or on who else uses it: a target missed there is a fault. */
const certain: readonly PartName[] = ['exactness', 'colours'];

const asked = new Set(process.argv.slice(2));
const [json, quick] = ['--json', '--quick'].map((option) => asked.delete(option));
const named = partNames.filter((name) => asked.delete(name));
if (asked.size > 0) {
  const allowed = ['--json', '--quick', ...partNames].join(', ');
  process.stderr.write(`bench: ${[...asked].join(' ')} means nothing here. Allowed: ${allowed}.\n`);
  process.exit(2);
}

/** Where files lie in memory, so that no disk is measured. */
const inMemory = '/dev/shm';

async function measureAll(setting: Setting) {
  const measured: (Measured & { name: PartName })[] = [];
  for (const name of named.length > 0 ? named : partNames) {
    const part = { name, title: parts[name].title, figures: await parts[name].measure(setting) };
    (json ? process.stderr : process.stdout).write(`${plainTable(part)}\n`);
    measured.push(part);
  }
  return measured;
}

const folder = mkdtempSync(join(existsSync(inMemory) ? inMemory : tmpdir(), 'gatelight-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(130));

const setting: Setting = {
  quick,
  rounds: quick ? 3 : 5,
  folder,
  ffmpeg: findFfmpeg(),
  openColorIO: findOpenColorIO(),
};
const machine = machineLines(setting);
(json ? process.stderr : process.stdout).write(`${machine.join('\n')}\n\n`);
const measured = await measureAll(setting);
const figures = measured.flatMap((part) => part.figures);
if (json)
  process.stdout.write(`${JSON.stringify({ machine, ratios: ratiosOf(figures), figures }, null, 2)}\n`);
if (!quick && named.length === 0) {
  const today = new Date().toISOString().slice(0, 10);
  writeFileSync(join(root, 'tests/bench/RESULTS.md'), markdownReport(machine, measured, today));
}
const wrong = measured
  .filter(({ name }) => certain.includes(name))
  .flatMap((part) => part.figures.filter((figure) => isMet(figure) === false));
if (wrong.length > 0) {
  process.stderr.write(`${wrong.length} figures of colour or exactness miss their target\n`);
  process.exitCode = 1;
}

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compileLook } from '../../src/look/compile-look.js';
import { lookSchema } from '../../src/look/look-schema.js';
import { commonLutFormat } from '../../src/lut/formats/common-lut-format/index.js';
import { readProcessNodes } from '../../src/lut/formats/common-lut-format/read.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import type { CurveTable, Lut } from '../../src/lut/lattice.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';

/** Debian's own Python, for which the package is made. */
const python = process.env.PYTHON ?? '/usr/bin/python3';
const script = resolve(import.meta.dirname, 'opencolorio.py');

interface Answer {
  readonly version: string;
  readonly colours: number[][];
}

function ask(question: object): Answer {
  const run = spawnSync(python, [script], { input: JSON.stringify(question), encoding: 'utf8' });
  if (run.status !== 0) throw new Error(`python3-pyopencolorio did not answer: ${run.stderr}`);
  return JSON.parse(run.stdout) as Answer;
}

const random = seededRandom(31);
const colours = Array.from({ length: 2000 }, () => [random(), random(), random()]);
const flat = Float64Array.from(colours.flat());

/** Single precision with tables of some 1e5 numbers, and six decimals in the file. */
const within = 2e-6;

function worst(ours: Float64Array, theirs: number[][]): number {
  return theirs.flat().reduce((most, value, i) => Math.max(most, Math.abs(value - ours[i])), 0);
}

const projected = compileLook(
  lookSchema.parse({
    name: 'projected',
    projector: { lamp: { kelvin: 3200 }, flare: 0.004 },
    room: { surround: 'dark', displaySurround: 'dim' },
  }),
);
const curves: CurveTable = {
  kind: '1d',
  size: 1024,
  domainMin: [0, 0, 0],
  domainMax: [1, 1, 1],
  values: Float64Array.from({ length: 3072 }, (_, i) => (Math.floor(i / 3) / 1023) ** (0.8 + 0.2 * (i % 3))),
};
const luts: [string, Lut][] = [
  ['a projected look, 33 points', sampleLattice(projected, 33)],
  ['a projected look, 65 points', sampleLattice(projected, 65)],
  ['a table on a domain of its own', sampleLattice(projected, 17, [0.1, -0.2, 0], [0.9, 1.2, 0.75])],
  ['curves', curves],
];

describe('Common LUT Format against OpenColorIO', () => {
  let folder: string;
  beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'clf-'))));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(luts)('reads what we write: %s', (name, lut) => {
    const file = join(folder, `${name}.clf`);
    writeFileSync(file, commonLutFormat.write(lut, { title: name, comments: [['lamp', '3200 K']] }));
    const { colours: theirs, version } = ask({ apply: file, colours });
    const ours = flat.slice();
    sampleLut(lut)(ours, colours.length);
    const apart = worst(ours, theirs);
    process.stdout.write(`OpenColorIO ${version} reads ${name}: ${apart.toExponential(1)} apart\n`);
    expect(apart).toBeLessThan(within);
  });

  it.each([
    ['basicFwd', 'exponent="2.2"'],
    ['basicRev', 'exponent="2.2"'],
    ['basicMirrorFwd', 'exponent="1.8"'],
    ['basicPassThruRev', 'exponent="2.6"'],
    ['monCurveFwd', 'exponent="2.4" offset="0.055"'],
    ['monCurveRev', 'exponent="2.2" offset="0.099"'],
    ['monCurveMirrorRev', 'exponent="3" offset="0.16"'],
  ])('reads an Exponent as we do: %s', (style, parameters) => {
    const file = join(folder, `${style}.clf`);
    const node = `<Exponent inBitDepth="32f" outBitDepth="32f" style="${style}"><ExponentParams ${parameters}/></Exponent>`;
    writeFileSync(file, `<ProcessList id="x" compCLFversion="3.0">${node}</ProcessList>`);
    const beyond = colours.map((colour) => colour.map((value) => 1.4 * value - 0.2));
    const { colours: theirs } = ask({ apply: file, colours: beyond });
    const ours = Float64Array.from(beyond.flat());
    for (const { run } of readProcessNodes(readFileSync(file), file)) run(ours, beyond.length);
    expect(worst(ours, theirs)).toBeLessThan(within);
  });

  it.each(['Fwd', 'FwdNoClamp', 'Rev', 'RevNoClamp'])('reads an ASC_CDL as we do: %s', (style) => {
    const file = join(folder, `${style}.clf`);
    const sop =
      '<SOPNode><Slope>1.2 0.9 0.8</Slope><Offset>0.02 -0.05 0.1</Offset><Power>1.2 0.9 1.5</Power></SOPNode>';
    const inside = `${sop}<SatNode><Saturation>1.3</Saturation></SatNode>`;
    const node = `<ASC_CDL inBitDepth="32f" outBitDepth="32f" style="${style}">${inside}</ASC_CDL>`;
    writeFileSync(file, `<ProcessList id="x" compCLFversion="3.0">${node}</ProcessList>`);
    const { colours: theirs } = ask({ apply: file, colours });
    const ours = flat.slice();
    for (const { run } of readProcessNodes(readFileSync(file), file)) run(ours, colours.length);
    process.stdout.write(
      `OpenColorIO reads ASC_CDL ${style}: ${worst(ours, theirs).toExponential(1)} apart\n`,
    );
    expect(worst(ours, theirs)).toBeLessThan(within);
  });

  it('writes what we read: matrix, range, curve, camera logarithm and 3D table in a row', () => {
    const file = join(folder, 'nodes.clf');
    const { colours: theirs } = ask({ write: file, colours });
    const ours = flat.slice();
    const steps = readProcessNodes(readFileSync(file), file);
    expect(steps).toHaveLength(5);
    for (const { run } of steps) run(ours, colours.length);
    const apart = worst(ours, theirs);
    process.stdout.write(`OpenColorIO writes five nodes: ${apart.toExponential(1)} apart\n`);
    expect(apart).toBeLessThan(within);
  });
});

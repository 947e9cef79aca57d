import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ffmpeg from '@ffmpeg-installer/ffmpeg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { applyToCodes, type Codes } from '../../src/lut/apply-codes.js';
import { writeCube } from '../../src/lut/formats/cube/write.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { type Lattice, type Lut, sampleLattice } from '../../src/lut/lattice.js';
import { lookSchema } from '../../src/look/look-schema.js';
import { buildCurves } from '../../src/jobs/build-curves.js';
import { compileLook } from '../../src/look/compile-look.js';
import { seededRandom } from '../../src/maths/random.js';

/** It cuts decimals off where we round half up, so it lies up to one code below. */
const oneCode = 1;

/** A double's rounding in light, 1e-14, is 1.5e-6 of a code near black at gamma 2.4. */
const curvesHold = 2e-6;

const [width, height] = [256, 256];
const random = seededRandom(19690720);

const depths = {
  rgb24: { Codes: Uint8Array, most: 255 },
  rgb48le: { Codes: Uint16Array, most: 65535 },
} as const;

type Format = keyof typeof depths;

let folder: string;
beforeAll(() => void (folder = mkdtempSync(join(tmpdir(), 'lut-peer-'))));
afterAll(() => rmSync(folder, { recursive: true }));

/** The same picture through the other program; the format is named at both ends, else it works in 8 bit. */
function throughPeer(lut: Lut, source: Codes, format: Format): Codes {
  writeFileSync(join(folder, 'look.cube'), writeCube(lut));
  const raw = ['-f', 'rawvideo', '-pix_fmt', format, '-s', `${width}x${height}`];
  const through =
    lut.kind === '3d' ? 'lut3d=file=look.cube:interp=tetrahedral' : 'lut1d=file=look.cube:interp=linear';
  const filter = `format=${format},${through},format=${format}`;
  const output = execFileSync(
    ffmpeg.path,
    ['-v', 'error', ...raw, '-i', 'pipe:0', '-vf', filter, '-f', 'rawvideo', '-pix_fmt', format, 'pipe:1'],
    { cwd: folder, input: source, maxBuffer: 2 ** 26 },
  );
  const bytes = Uint8Array.from(output);
  return format === 'rgb24' ? bytes : new Uint16Array(bytes.buffer);
}

function picture(format: Format, code: (i: number, most: number) => number): Codes {
  const { Codes, most } = depths[format];
  const codes: Codes = new Codes(3 * width * height);
  for (let i = 0; i < codes.length; i++) codes[i] = Math.round(code(i, most));
  return codes;
}

const luts: Record<string, (size: number) => Lattice> = {
  'a smooth look': (size) =>
    sampleLattice((run, count) => {
      for (let i = 0; i < 3 * count; i += 3) {
        const [r, g, b] = run.subarray(i, i + 3);
        run.set([(0.9 * r + 0.1 * g) ** 0.9, 0.95 * g ** 1.1, 0.05 * r + 0.8 * b], i);
      }
    }, size),
  'random values': (size) => sampleLattice((run) => void run.forEach((_, i) => (run[i] = random())), size),
};

const pictures: Record<string, (format: Format) => Codes> = {
  'random codes': (format) => picture(format, (_, most) => random() * most),
  greys: (format) => picture(format, (i, most) => (Math.floor(i / 3) / (width * height - 1)) * most),
};

const cases = Object.keys(luts).flatMap((lut) =>
  Object.keys(pictures).flatMap((kind) =>
    [17, 33].flatMap((size) =>
      (Object.keys(depths) as Format[]).map((format) => [lut, size, kind, format] as const),
    ),
  ),
);

describe('a picture through a LUT, here and in ffmpeg', () => {
  it.each(cases)('%s of %i nodes, %s, %s: within one code', (lut, size, kind, format) => {
    const lattice = luts[lut](size);
    const source = pictures[kind](format);
    const ours = source.slice() as Codes;
    applyToCodes(lattice, source, ours, 3);
    const theirs = throughPeer(lattice, source, format);
    expect(theirs.length).toBe(ours.length);
    let worst = 0;
    let equal = 0;
    ours.forEach((code, i) => {
      worst = Math.max(worst, Math.abs(code - theirs[i]));
      if (code === theirs[i]) equal++;
    });
    const share = ((100 * equal) / ours.length).toFixed(1);
    process.stdout.write(`ffmpeg, ${lut}, ${size}, ${kind}, ${format}: worst ${worst}, equal ${share} %\n`);
    expect(worst).toBeLessThanOrEqual(oneCode);
    // Cutting off and rounding agree on about half of all codes; had the depth been lost, on next to none.
    expect(equal / ours.length).toBeGreaterThan(0.25);
  });
});

describe('a look that is nothing but curves, as a 1D LUT', () => {
  const look = lookSchema.parse({
    name: 'Lighter, warmer, for a display of gamma 2.4',
    camera: { primaries: 'bt2020' },
    print: { exposureStops: 0.4, printerPoints: { red: 2, blue: -3 }, contrast: 0.9 },
    delivery: { encoding: 'gamma-2.4' },
  });
  const { lut: curves } = buildCurves(look, { size: 1024 }, { version: 'test', sha256: () => '' });

  it.each(Object.keys(depths) as Format[])('%s through ffmpeg: within one code', (format) => {
    const source = pictures['random codes'](format);
    const ours = source.slice() as Codes;
    applyToCodes(curves, source, ours, 3);
    const theirs = throughPeer(curves, source, format);
    const worst = Array.from(ours).reduce((most, code, i) => Math.max(most, Math.abs(code - theirs[i])), 0);
    expect(worst).toBeLessThanOrEqual(oneCode);
  });

  it('is the 3D LUT of the same look at its nodes', () => {
    // Nodes that are entries too: 1023 steps are 33 times 31.
    const size = 32;
    const { values } = sampleLattice(compileLook(look), size);
    const codes = sampleLattice(() => undefined, size).values;
    sampleLut(curves)(codes, size ** 3);
    const worst = codes.reduce((most, code, i) => Math.max(most, Math.abs(code - values[i])), 0);
    expect(worst).toBeLessThan(curvesHold);
  });
});

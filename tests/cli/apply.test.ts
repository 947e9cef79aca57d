import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { decode } from 'tiff';
import { describe, expect, it } from 'vitest';
import { renderDemoStill } from '../../src/demo/index.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { readCube } from '../../src/lut/formats/cube/read.js';
import { floatTiffFile } from '../stills/fixtures.js';
import { gatelight, isPlainRefusal, projectRoot, temporaryFolder } from './gatelight.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const [width, height] = [40, 30];

/** Codes all over the cube, the same each time. */
const codes = Uint16Array.from(
  { length: 3 * width * height },
  (_, i) => (i * 40503 + 7919 * (i % 3)) & 65535,
);
await sharp(codes, { raw: { width, height, channels: 3 } })
  .toColourspace('rgb16')
  .png()
  .toFile(at('deep.png'));
await sharp(codes, { raw: { width, height, channels: 3 } })
  .toColourspace('rgb16')
  .tiff({ compression: 'lzw' })
  .toFile(at('deep.tif'));
gatelight(['build', join(projectRoot, 'looks/warm-stock-and-lamp.json'), '-o', at('warm.cube')]);

/** As far as a 16-bit code may lie from the exact value: half a code of rounding, and what single precision adds. */
const bound = 0.6;

/** As far as numbers in single precision may lie from the exact ones: some of their last bits, of values up to 1. */
const singlePrecision = 1e-6;

/** Codes: rounding before and after a table whose slopes stay below this many. */
const roundedTwice = 4;

/** What the table says in double precision, in codes, not rounded. */
function expected(): Float64Array {
  const values = Float64Array.from(codes, (code) => code / 65535);
  sampleLut(readCube(readFileSync(at('warm.cube')), 'warm.cube').lut)(values, width * height);
  return values.map((value) => 65535 * value);
}

describe('gatelight apply', () => {
  it.each(['deep.png', 'deep.tif'])(
    'keeps 16 bit and equals the double-precision table: %s',
    async (name) => {
      const output = at(`out-${name}`);
      expect(gatelight(['apply', at('warm.cube'), at(name), '-o', output]).status).toBe(0);
      const { data } = await sharp(output)
        .raw({ depth: 'ushort' })
        .toColourspace('rgb16')
        .toBuffer({ resolveWithObject: true });
      const got = new Uint16Array(data.buffer, data.byteOffset, data.length / 2);
      const want = expected();
      expect(got).toHaveLength(want.length);
      expect(Math.max(...got.map((code, i) => Math.abs(code - want[i])))).toBeLessThanOrEqual(bound);
    },
  );

  it('keeps floating point in TIFF, clamped to the domain; other formats get 16 bit; preview takes it', async () => {
    const values = Array.from(codes, (code) => Math.fround((1.2 * code) / 65535 - 0.1));
    writeFileSync(at('float.tif'), floatTiffFile(width, 3, values));
    const outputs = [at('out-float.tif'), at('out-float.png')];
    const [kept, rounded] = outputs.map((output) =>
      gatelight(['apply', at('warm.cube'), at('float.tif'), '-o', output]),
    );
    expect([kept.status, rounded.status]).toEqual([0, 0]);
    expect(kept.stderr).not.toContain('rounded');
    expect(rounded.stderr).toContain('rounded to 16 bits; TIFF keeps them');
    const want = Float64Array.from(values);
    sampleLut(readCube(readFileSync(at('warm.cube')), 'warm.cube').lut)(want, width * height);
    // Read by an independent reader.
    const got = decode(readFileSync(outputs[0]))[0].data;
    expect(got).toBeInstanceOf(Float32Array);
    expect(Math.max(...want.map((value, i) => Math.abs(value - got[i])))).toBeLessThan(singlePrecision);
    const { data } = await sharp(outputs[1])
      .toColourspace('rgb16')
      .raw({ depth: 'ushort' })
      .toBuffer({ resolveWithObject: true });
    const png = new Uint16Array(data.buffer, data.byteOffset, data.length / 2);
    // Rounded before and after: half a code through the steepest slope of the table, and half a code.
    expect(Math.max(...want.map((value, i) => Math.abs(65535 * value - png[i])))).toBeLessThan(roundedTwice);
    expect(gatelight(['preview', at('warm.cube'), at('float.tif'), '-o', at('seen.png')]).status).toBe(0);
  });

  it('writes floating point that verify finds burnt in as it should be', () => {
    const { data } = renderDemoStill('tram', { width: 240, height: 180, age: 'pink' });
    const values = Array.from(data, (code) => code / (data instanceof Uint8Array ? 255 : 65535));
    writeFileSync(at('tram.tif'), floatTiffFile(240, 3, values));
    gatelight(['apply', at('warm.cube'), at('tram.tif'), '-o', at('tram-burnt.tif')]);
    const verified = (look: string) =>
      gatelight(['verify', at('tram.tif'), at('tram-burnt.tif'), look]).status;
    expect(verified(at('warm.cube'))).toBe(0);
    expect(verified(join(projectRoot, 'looks/xenon-hall.json'))).toBe(1);
  });

  it('does a folder, tells of the one that cannot be done, and ends with 1', () => {
    mkdirSync(at('frames'));
    for (const name of ['f1.png', 'f2.png'])
      writeFileSync(at(`frames/${name}`), readFileSync(at('deep.png')));
    writeFileSync(at('frames/f3.png'), 'no picture');
    const ended = gatelight(['apply', at('warm.cube'), at('frames'), '-o', at('graded')]);
    expect(ended.status).toBe(1);
    expect(ended.stderr).toContain('f3.png');
    expect(readFileSync(at('graded/f1.png')).equals(readFileSync(at('graded/f2.png')))).toBe(true);
  });

  it('never writes over a source, and nothing without --force', () => {
    const over = gatelight(['apply', at('warm.cube'), at('deep.png'), '-o', at('deep.png'), '--force']);
    expect(isPlainRefusal(over), over.stderr).toBe(true);
    const again = gatelight(['apply', at('warm.cube'), at('deep.png'), '-o', at('out-deep.png')]);
    expect(isPlainRefusal(again), again.stderr).toBe(true);
  });

  it('ends with 2 when no still could be done, and refuses a format it cannot write', () => {
    mkdirSync(at('broken'));
    for (const name of ['b1.png', 'b2.png']) writeFileSync(at(`broken/${name}`), 'no picture');
    expect(gatelight(['apply', at('warm.cube'), at('broken'), '-o', at('never')]).status).toBe(2);
    const gif = gatelight(['apply', at('warm.cube'), at('deep.png'), '-o', at('out.gif')]);
    expect(isPlainRefusal(gif), gif.stderr).toBe(true);
  });

  it.each([
    ['--encoder', 'libx264'],
    ['--encoder-options', '-crf 16'],
  ])('refuses %s for stills', (option, value) => {
    const ended = gatelight([
      'apply',
      at('warm.cube'),
      at('deep.png'),
      '-o',
      at('none.png'),
      `${option}=${value}`,
    ]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain(`${option}: is for a whole movie`);
  });

  it.each([
    ['--matrix', 'bt709'],
    ['--range', 'legal'],
  ])('refuses %s for a folder, which holds no movie', (option, value) => {
    mkdirSync(at('stills'), { recursive: true });
    copyFileSync(at('deep.png'), at('stills/deep.png'));
    const ended = gatelight(['apply', at('warm.cube'), at('stills'), '-o', at('none'), option, value]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain(`${option}: is for movie files`);
    expect(existsSync(at('none'))).toBe(false);
  });

  it('refuses a folder without stills', () => {
    mkdirSync(at('bare'));
    const ended = gatelight(['apply', at('warm.cube'), at('bare'), '-o', at('x')]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain('holds no stills');
  });
});

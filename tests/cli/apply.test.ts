import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { sampleLut } from '../../src/lut/interpolate.js';
import { readCube } from '../../src/lut/formats/cube/read.js';
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

  it('refuses a folder without stills', () => {
    mkdirSync(at('bare'));
    const ended = gatelight(['apply', at('warm.cube'), at('bare'), '-o', at('x')]);
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toContain('holds no stills');
  });
});

import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { buildCurves } from '../../src/jobs/build-curves.js';
import { buildLook, type BuildOptions } from '../../src/jobs/build-look.js';
import { lutOrigin, rebuildLut, tableDifference } from '../../src/jobs/lut-origin.js';
import { canonicalLook } from '../../src/look/canonical-look.js';
import { lookSchema } from '../../src/look/look-schema.js';
import { lutFormats } from '../../src/lut/formats/index.js';
import type { LutFormat } from '../../src/lut/formats/lut-format.js';

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');
const maker = { version: '7.8.9', sha256 };

const plainLook = lookSchema.parse({ name: 'Darker, for the “attic”', print: { exposureStops: -0.3 } });
const lampLook = lookSchema.parse({ name: 'Lamp', projector: { lamp: { kelvin: 3000 }, flare: 0.003 } });

function read(text: string, format: LutFormat = lutFormats.cube) {
  const reader = format.createReader('x');
  reader.write(Buffer.from(text));
  return reader.end();
}

describe('origin of a LUT file', () => {
  it('is read from its comments, kind and size', () => {
    const { text } = buildLook(lampLook, { size: 9, title: 'Evening' }, maker);
    expect(lutOrigin(read(text))).toEqual({
      look: { name: 'Lamp', sha256: sha256(canonicalLook(lampLook)) },
      takes: 'srgb bt709 full',
      gives: 'srgb bt709 full',
      version: '7.8.9',
      title: 'Evening',
      kind: '3d',
      size: 9,
    });
  });

  it.each([
    ['no comments', 'LUT_3D_SIZE 2\n', {}],
    ['a hash that is none', '# look: A\n# look SHA-256: abc\nLUT_3D_SIZE 2\n', {}],
    ['another program', '# made with: something else 1.0\nLUT_3D_SIZE 2\n', {}],
    ['an undone file without its hash', '# way back from: A\nLUT_3D_SIZE 2\n', {}],
    ['a hash without a look', `# look SHA-256: ${'a'.repeat(64)}\nLUT_3D_SIZE 2\n`, {}],
  ])('is not made up where there is %s', (_, head, said) => {
    expect(lutOrigin(read(`${head}${'0 0 0\n'.repeat(8)}`))).toEqual({ kind: '3d', size: 2, ...said });
  });
});

describe('a LUT file built again', () => {
  const { cube, commonLutFormat } = lutFormats;
  const asked: readonly (readonly [string, BuildOptions])[] = [
    ['the usual way', { size: 9 }],
    ['with a title', { size: 5, title: 'Title "of" 🎞 its own — long '.repeat(12) }],
    ['with no title', { size: 5, title: '' }],
    ['plain', { size: 5, plain: true }],
    ['as Common LUT Format', { size: 5, title: '<A> & "B"', format: commonLutFormat }],
    ['with no title, as Common LUT Format', { size: 5, title: '', format: commonLutFormat }],
    ['plain, as Common LUT Format', { size: 5, plain: true, format: commonLutFormat }],
  ];
  it.each(asked)('has every byte of the first: %s', (_, options) => {
    const { format = cube } = options;
    const { text } = buildLook(lampLook, options, maker);
    expect(rebuildLut(read(text, format), lampLook, maker, format)).toBe(text);
  });

  it('curves too', () => {
    const { text } = buildCurves(plainLook, { size: 64 }, maker);
    expect(rebuildLut(read(text), plainLook, maker)).toBe(text);
  });

  it('of another look is another', () => {
    const { text } = buildLook(lampLook, { size: 5 }, maker);
    const again = rebuildLut(read(text), plainLook, maker);
    expect(again).not.toBe(text);
    expect(tableDifference(read(text).lut, read(again).lut)).toBeGreaterThan(0.01);
  });

  it('tables of different shape have no difference in figures', () => {
    const [small, large] = [5, 6].map((size) => buildLook(lampLook, { size }, maker).lut);
    expect(tableDifference(small, large)).toBeUndefined();
    expect(tableDifference(small, small)).toBe(0);
  });
});

import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { decodeStill } from '../../src/stills/read-still.js';
import { chunk, jpeg, namedProfile, png, shorts, someProfile, tiff } from './fixtures.js';

/** Codes at the ends, beside them, and some whose two bytes differ. */
const deep = [0, 1, 257, 255, 256, 12345, 32768, 40000, 65279, 65534, 65535, 4660];

const bigBytes = (values: readonly number[]) => values.flatMap((value) => [value >> 8, value & 255]);

describe('PNG', () => {
  it.each([
    ['grey', 0, 1],
    ['RGB', 2, 3],
    ['grey + alpha', 4, 2],
    ['RGBA', 6, 4],
  ] as const)('16 bits, %s: every code as it is', async (_, colourType, channels) => {
    const width = deep.length / channels;
    const file = png({ width, height: 1, bits: 16, colourType, rows: [0, ...bigBytes(deep)] });
    const { picture, notes, profile } = await decodeStill(file, 'a.png');
    expect(picture).toEqual({ width, height: 1, channels, bits: 16, data: Uint16Array.from(deep) });
    expect([notes, profile]).toEqual([[], undefined]);
  });

  it.each([
    ['grey', 0, 1],
    ['RGB', 2, 3],
    ['grey + alpha', 4, 2],
    ['RGBA', 6, 4],
  ] as const)('8 bits, %s: every code as it is', async (_, colourType, channels) => {
    const codes = [0, 1, 2, 127, 128, 129, 200, 253, 254, 255, 0, 255];
    const width = codes.length / channels;
    const { picture } = await decodeStill(
      png({ width, height: 1, bits: 8, colourType, rows: [0, ...codes] }),
      'a',
    );
    expect(picture).toEqual({ width, height: 1, channels, bits: 8, data: Uint8Array.from(codes) });
  });

  it('expands palettes, with their alpha', async () => {
    const palette = chunk('PLTE', Uint8Array.from([1, 2, 3, 40, 50, 60, 255, 0, 9]));
    const parts = { width: 4, height: 1, bits: 2, colourType: 3, rows: [0, 0b00011000] };
    const plain = await decodeStill(png({ ...parts, chunks: [palette] }), 'a.png');
    expect(plain.picture).toMatchObject({ channels: 3, bits: 8 });
    expect([...plain.picture.data]).toEqual([1, 2, 3, 40, 50, 60, 255, 0, 9, 1, 2, 3]);
    const clear = chunk('tRNS', Uint8Array.from([255, 128]));
    const { picture } = await decodeStill(png({ ...parts, chunks: [palette, clear] }), 'a.png');
    expect([...picture.data]).toEqual([1, 2, 3, 255, 40, 50, 60, 128, 255, 0, 9, 255, 1, 2, 3, 255]);
  });

  it('widens 1, 2 and 4 bits to the whole range', async () => {
    const of = async (bits: number, width: number, byte: number) => [
      ...(await decodeStill(png({ width, height: 1, bits, colourType: 0, rows: [0, byte] }), 'a')).picture
        .data,
    ];
    expect(await of(1, 4, 0b10100000)).toEqual([255, 0, 255, 0]);
    expect(await of(2, 4, 0b00011011)).toEqual([0, 85, 170, 255]);
    expect(await of(4, 2, 0x1f)).toEqual([17, 255]);
  });

  it('does not apply the gamma a file names', async () => {
    const gamma = chunk('gAMA', Uint8Array.from([0, 1, 0x86, 0xa0]));
    const file = png({
      width: 2,
      height: 1,
      bits: 16,
      colourType: 0,
      rows: [0, ...bigBytes([300, 50000])],
      chunks: [gamma],
    });
    expect([...(await decodeStill(file, 'a')).picture.data]).toEqual([300, 50000]);
  });

  it('takes the still picture of an animation, and says so', async () => {
    const control = chunk('acTL', Uint8Array.from([0, 0, 0, 1, 0, 0, 0, 0]));
    const file = png({ width: 1, height: 1, bits: 8, colourType: 0, rows: [0, 5], chunks: [control] });
    const { picture, notes } = await decodeStill(file, 'a');
    expect([[...picture.data], notes]).toEqual([[5], ['it is animated; its still picture is used']]);
  });
});

describe('TIFF', () => {
  it.each([
    ['grey', 1, 1, []],
    ['RGB', 3, 2, []],
    ['grey + alpha', 2, 1, [[338, 3, [2]]]],
    ['RGBA', 4, 2, [[338, 3, [2]]]],
  ] as const)(
    '16 bits, %s, either byte order: every code as it is',
    async (_, samples, photometric, more) => {
      const width = deep.length / samples;
      for (const bigEndian of [false, true]) {
        const data = shorts(deep, bigEndian);
        const file = tiff({ width, height: 1, samples, bits: 16, photometric, data, more, bigEndian });
        const { picture, notes } = await decodeStill(file, 'a.tif');
        expect(picture).toEqual({
          width,
          height: 1,
          channels: samples,
          bits: 16,
          data: Uint16Array.from(deep),
        });
        expect(notes).toEqual([]);
      }
    },
  );

  it('8 bits: every code as it is, straight alpha too', async () => {
    const data = Uint8Array.from([50, 25, 10, 128, 1, 2, 3, 0]);
    const file = tiff({
      width: 2,
      height: 1,
      samples: 4,
      bits: 8,
      photometric: 2,
      data,
      more: [[338, 3, [2]]],
    });
    expect((await decodeStill(file, 'a')).picture.data).toEqual(data);
  });

  it('divides alpha out where it was multiplied in, and says so', async () => {
    const data = Uint8Array.from([50, 25, 10, 128, 9, 8, 7, 255]);
    const file = tiff({
      width: 2,
      height: 1,
      samples: 4,
      bits: 8,
      photometric: 2,
      data,
      more: [[338, 3, [1]]],
    });
    const { picture, notes } = await decodeStill(file, 'a');
    expect(notes).toEqual(['its colours were multiplied by alpha; that was divided out']);
    // 255 c / 128, to the code: the decoder cuts off.
    [50, 25, 10].forEach((code, c) => expect(Math.abs(picture.data[c] - (code * 255) / 128)).toBeLessThan(1));
    expect([...picture.data.slice(3)]).toEqual([128, 9, 8, 7, 255]);
  });

  it('turns round grey that is stored with white as 0', async () => {
    const file = tiff({ width: 2, height: 1, samples: 1, bits: 16, photometric: 0, data: shorts([0, 1000]) });
    expect([...(await decodeStill(file, 'a')).picture.data]).toEqual([65535, 64535]);
  });

  it('takes the first of several pictures, and says so', async () => {
    const file = tiff({
      width: 2,
      height: 1,
      samples: 1,
      bits: 8,
      photometric: 1,
      data: Uint8Array.from([7, 8]),
      next: 'again',
    });
    const { picture, notes } = await decodeStill(file, 'a');
    expect([picture.height, notes]).toEqual([1, ['it holds 2 pictures; the first is used']]);
  });

  it.each(['lzw', 'deflate', 'packbits', 'none'] as const)(
    'reads compression %s exactly',
    async (compression) => {
      const data = Uint16Array.from({ length: 300 }, (_, i) => (i * 7919) % 65536);
      const raw = { width: 10, height: 10, channels: 3 as const, depth: 'ushort' as const };
      const file = await sharp(data, { raw }).toColourspace('rgb16').tiff({ compression }).toBuffer();
      expect((await decodeStill(file, 'a.tif')).picture.data).toEqual(data);
    },
  );
});

describe('JPEG', () => {
  it('is 8 bits, grey or RGB', async () => {
    for (const colour of [[90], [200, 100, 50]]) {
      const { picture, notes } = await decodeStill(await jpeg(16, 9, colour), 'a.jpg');
      expect(picture).toMatchObject({ width: 16, height: 9, channels: colour.length, bits: 8 });
      // An even picture comes back within the rounding to YCbCr and back.
      picture.data.forEach((code, i) =>
        expect(Math.abs(code - colour[i % colour.length])).toBeLessThanOrEqual(2),
      );
      expect(notes).toEqual([]);
    }
  });
});

describe('orientation', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('%i is obeyed like libvips obeys it, once', async (orientation) => {
    const data = Uint8Array.from({ length: 18 }, (_, i) => 10 * i);
    const raw = { width: 3, height: 2, channels: 3 as const };
    for (const format of ['png', 'tiff'] as const) {
      const file = await sharp(data, { raw })
        .withMetadata({ orientation })
        .toFormat(format, { compression: 'none' })
        .toBuffer();
      const upright = await sharp(file).autoOrient().raw().toBuffer({ resolveWithObject: true });
      const { picture, notes } = await decodeStill(file, 'a');
      expect([picture.width, picture.height]).toEqual([upright.info.width, upright.info.height]);
      expect(picture.data).toEqual(new Uint8Array(upright.data));
      // The writer of this file adds a profile, which has a note of its own.
      expect(notes.slice(0, -1)).toEqual(
        orientation === 1 ? [] : ['turned upright, as the file says it was held'],
      );
    }
  });
});

describe('colour profile', () => {
  it.each(['png', 'tiff'] as const)('%s: kept and named, and nothing is converted by it', async (format) => {
    const codes = [0, 65535, 300, 40000, 1, 20000];
    const icc = await someProfile();
    const bare = tiff({ width: 2, height: 1, samples: 3, bits: 16, photometric: 2, data: shorts(codes) });
    const withProfile =
      format === 'tiff'
        ? tiff({
            width: 2,
            height: 1,
            samples: 3,
            bits: 16,
            photometric: 2,
            data: shorts(codes),
            more: [[34675, 1, [...icc]]],
          })
        : png({
            width: 2,
            height: 1,
            bits: 16,
            colourType: 2,
            rows: [0, ...bigBytes(codes)],
            chunks: [chunk('iCCP', Buffer.concat([Buffer.from('p\0\0', 'latin1'), deflateSync(icc)]))],
          });
    const still = await decodeStill(withProfile, 'a');
    expect(still.picture).toEqual((await decodeStill(bare, 'a')).picture);
    expect(still.profile).toEqual(new Uint8Array(icc));
    expect(still.notes).toEqual(['colour profile: sP3C; the code values are used as they are']);
  });

  it('is named, whatever it is called', async () => {
    const icc = namedProfile('Gate camera, 1968', 2);
    const file = tiff({
      width: 1,
      height: 1,
      samples: 1,
      bits: 8,
      photometric: 1,
      data: Uint8Array.from([9]),
      more: [[34675, 1, [...icc]]],
    });
    const { picture, notes } = await decodeStill(file, 'a');
    expect([...picture.data]).toEqual([9]);
    expect(notes).toEqual(['colour profile: Gate camera, 1968; the code values are used as they are']);
  });
});

describe('sizes', () => {
  it('one pixel', async () => {
    const file = png({ width: 1, height: 1, bits: 8, colourType: 2, rows: [0, 1, 2, 3] });
    expect((await decodeStill(file, 'a')).picture).toMatchObject({ width: 1, height: 1 });
  });

  it('very wide and very tall', async () => {
    const wide = png({
      width: 60_000,
      height: 1,
      bits: 8,
      colourType: 0,
      rows: Array<number>(60_001).fill(0),
    });
    expect((await decodeStill(wide, 'a')).picture.width).toBe(60_000);
    const tall = png({
      width: 1,
      height: 60_000,
      bits: 8,
      colourType: 0,
      rows: Array<number>(120_000).fill(0),
    });
    expect((await decodeStill(tall, 'a')).picture.height).toBe(60_000);
  });
});

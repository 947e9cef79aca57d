import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { createCubeReader } from '../../src/lut/formats/cube/read.js';

const mebibyte = 1024 * 1024;
const encode = (text: string) => new TextEncoder().encode(text);

/** Feeds a head and then the same piece again and again; how many bytes of it were taken before the refusal. */
function bytesBeforeRefusal(head: string, piece: Uint8Array, most: number): [bytes: number, said: string] {
  const reader = createCubeReader('endless.cube');
  let bytes = 0;
  try {
    reader.write(encode(head));
    for (; bytes < most; bytes += piece.length) reader.write(piece);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return [bytes + piece.length, (error as InputError).message];
  }
  return [Infinity, 'never refused'];
}

const one = (character: string) => encode(character);

describe('an endless file is given up', () => {
  it.each([
    ['a row', 'LUT_3D_SIZE 2\n0 0 ', '1', 251 - 4],
    ['a keyword', 'LUT_3D_SIZE ', '9', 251 - 12],
    ['a blank line', '', ' ', 251],
    ['a comment', '#', 'x', 4097 - 1],
    ['a title', 'TITLE "', 'x', 4097 - 7],
  ])('at the first byte too many of %s', (_, head, character, most) => {
    const [bytes, said] = bytesBeforeRefusal(head, one(character), 10_000);
    expect(bytes).toBe(most);
    expect(said).toMatch(/longer than/);
  });

  it('within the first piece of a line of 300 MB', () => {
    const [bytes, said] = bytesBeforeRefusal(
      'LUT_3D_SIZE 2\n',
      new Uint8Array(mebibyte).fill(0x30),
      300 * mebibyte,
    );
    expect(bytes).toBe(mebibyte);
    expect(said).toMatch(/longer than 250 bytes/);
  });

  it('at the first row too many', () => {
    const [bytes, said] = bytesBeforeRefusal('LUT_3D_SIZE 17\n', one('0 0 0\n'), 20_000_000 * 6);
    expect(bytes).toBe(6 * (17 ** 3 + 1));
    expect(said).toMatch(/too many rows/);
  });

  it.each([
    ['line feeds', '\n'],
    ['carriage returns', '\r'],
    ['empty comments', '#\n'],
    ['comments with pairs', `# key: ${'x'.repeat(200)}\n`],
  ])('of %s after 16 MiB', (_, line) => {
    const piece = one(line.repeat(Math.ceil(mebibyte / line.length)));
    const [bytes, said] = bytesBeforeRefusal('', piece, 100 * mebibyte);
    expect(bytes).toBeLessThan(18 * mebibyte);
    expect(said).toMatch(/more than 16777216 bytes of comments and blank lines/);
  });
});

describe('a size is believed only as rows come', () => {
  it('256 nodes a side cost nothing before them', () => {
    const before = process.memoryUsage().arrayBuffers;
    const readers = Array.from({ length: 100 }, () => {
      const reader = createCubeReader('claim.cube');
      reader.write(one('LUT_3D_SIZE 256\n0 0 0\n'));
      return reader;
    });
    // 100 x 256^3 rows of 24 bytes would be 40 GB.
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(64 * mebibyte);
    expect(() => readers[0].end()).toThrow(/ends after 1 of 16777216 rows/);
  });

  it('a thousand comments are kept, the rest is read over', () => {
    const reader = createCubeReader('talk.cube');
    reader.write(one('# key: value\n'.repeat(5000)));
    reader.write(one('LUT_1D_SIZE 2\n0 0 0\n1 1 1\n'));
    const { comments, notes } = reader.end();
    expect(comments).toHaveLength(1000);
    expect(notes).toEqual(['Line 1001 begins the comments beyond 1000, which are left out.']);
  });
});

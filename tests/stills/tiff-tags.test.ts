import { describe, expect, it } from 'vitest';
import { sourceOfBytes } from '../../src/stills/byte-source.js';
import { readTiffTags, tags } from '../../src/stills/tiff-tags.js';
import { tiff } from './fixtures.js';

const plain = { width: 300, height: 1, samples: 3, bits: 16, photometric: 2, data: new Uint8Array(1800) };

describe('readTiffTags', () => {
  it.each([false, true])('reads the first value of each tag, near or far (big-endian: %s)', (bigEndian) => {
    const found = readTiffTags(
      sourceOfBytes(
        tiff({
          ...plain,
          bigEndian,
          more: [
            [339, 3, [3, 3, 3]],
            [50706, 1, [1, 4, 0, 0]],
          ],
        }),
      ),
    );
    expect(found.get(tags.photometric)).toBe(2);
    expect(found.get(tags.bitsPerSample)).toBe(16);
    expect(found.get(tags.sampleFormat)).toBe(3);
    expect(found.get(tags.rawVersion)).toBe(1);
    expect(found.get(256)).toBe(300);
    expect(found.has(tags.extraSamples)).toBe(false);
  });

  it('reads the form with long offsets (BigTIFF)', () => {
    const file = Buffer.alloc(80);
    file.write('II', 0, 'latin1');
    file.writeUInt16LE(43, 2);
    file.writeUInt16LE(8, 4);
    file.writeBigUInt64LE(16n, 8);
    file.writeBigUInt64LE(2n, 16);
    [
      [258, 32],
      [262, 8],
    ].forEach(([tag, value], i) => {
      file.writeUInt16LE(tag, 24 + 20 * i);
      file.writeUInt16LE(3, 26 + 20 * i);
      file.writeBigUInt64LE(1n, 28 + 20 * i);
      file.writeUInt16LE(value, 36 + 20 * i);
    });
    expect([...readTiffTags(sourceOfBytes(file))]).toEqual([
      [258, 32],
      [262, 8],
    ]);
  });

  it('ends quietly where the file does', () => {
    const file = tiff(plain);
    for (let length = 0; length < 200; length++)
      expect(readTiffTags(sourceOfBytes(file.subarray(0, length))).size).toBeLessThan(10);
  });
});

import { readSync } from 'node:fs';

/** Bytes that are read where they are wanted: a file need not be in memory for its header. */
export interface ByteSource {
  readonly size: number;
  /** @throws RangeError beyond the end */
  read(at: number, length: number): Uint8Array;
}

function requireWithin(size: number, at: number, length: number): void {
  if (!(at >= 0 && length >= 0 && at + length <= size)) throw new RangeError('beyond the end of the file');
}

export const sourceOfBytes = (bytes: Uint8Array): ByteSource => ({
  size: bytes.length,
  read(at, length) {
    requireWithin(bytes.length, at, length);
    return bytes.subarray(at, at + length);
  },
});

/** Bytes read from a disk at once: a header lies near the beginning, mostly. */
const blockBytes = 65536;

/** @param file an open file's descriptor */
export function sourceOfFile(file: number, size: number): ByteSource {
  let block = new Uint8Array(0);
  let blockAt = 0;
  return {
    size,
    read(at, length) {
      requireWithin(size, at, length);
      if (at < blockAt || at + length > blockAt + block.length) {
        block = new Uint8Array(Math.max(length, Math.min(blockBytes, size - at)));
        blockAt = at;
        const got = readSync(file, block, 0, block.length, at);
        if (got < length) throw new RangeError('the file has become shorter');
      }
      return block.slice(at - blockAt, at - blockAt + length);
    },
  };
}

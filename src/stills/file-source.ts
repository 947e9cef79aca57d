import { readSync } from 'node:fs';
import { type ByteSource, requireWithin } from './byte-source.js';

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

import { closeSync, fstatSync, openSync, readSync, writeSync } from 'node:fs';
import type { ByteSource } from '../byte-source.js';
import { sourceOfFile } from '../file-source.js';
import type { Addition } from './into-file.js';

/** Bytes moved at once. */
const blockBytes = 1 << 20;

function writeAll(file: number, bytes: Uint8Array, at: number): void {
  for (let done = 0; done < bytes.length;)
    done += writeSync(file, bytes, done, bytes.length - done, at + done);
}

/** Moves all from byte `from` on towards the end, last block first, so that none is written over before it has moved. */
function moveOn(file: number, from: number, size: number, by: number): void {
  const block = new Uint8Array(blockBytes);
  for (let end = size; end > from;) {
    const start = Math.max(from, end - blockBytes);
    const length = readSync(file, block, 0, end - start, start);
    if (length < end - start) throw new RangeError('the file has become shorter');
    writeAll(file, block.subarray(0, length), start + by);
    end = start;
  }
}

/** Gives a file on the disk what it is to carry; where the new head is as long as the old one, nothing is moved. */
export function addToFile(path: string, additionFor: (source: ByteSource) => Addition): void {
  const file = openSync(path, 'r+');
  try {
    const { size } = fstatSync(file);
    const { head, replaces, tail } = additionFor(sourceOfFile(file, size));
    const longer = head.length - replaces;
    if (longer > 0) moveOn(file, replaces, size, longer);
    writeAll(file, head, 0);
    writeAll(file, tail, size + longer);
  } finally {
    closeSync(file);
  }
}

/** Bytes that are read where they are wanted: a file need not be in memory for its header. */
export interface ByteSource {
  readonly size: number;
  /** @throws RangeError beyond the end */
  read(at: number, length: number): Uint8Array;
}

/** @throws RangeError beyond the end */
export function requireWithin(size: number, at: number, length: number): void {
  if (!(at >= 0 && length >= 0 && at + length <= size)) throw new RangeError('beyond the end of the file');
}

export const sourceOfBytes = (bytes: Uint8Array): ByteSource => ({
  size: bytes.length,
  read(at, length) {
    requireWithin(bytes.length, at, length);
    return bytes.subarray(at, at + length);
  },
});

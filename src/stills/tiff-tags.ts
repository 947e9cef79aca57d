/** Tags of a TIFF's first picture that decide how its numbers are to be read (TIFF 6.0, 1992, and its supplements). */
export const tags = {
  subfileType: 254,
  bitsPerSample: 258,
  photometric: 262,
  extraSamples: 338,
  sampleFormat: 339,
  subPictures: 330,
  rawVersion: 50706,
} as const;

/** Values of one and two bytes, of four, and of eight (BigTIFF); the types that the tags above may have. */
const sizes: Readonly<Record<number, 1 | 2 | 4 | 8>> = { 1: 1, 3: 2, 4: 4, 13: 4, 16: 8 };

function reader(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const little = bytes[0] === 0x49;
  return (at: number, size: 1 | 2 | 4 | 8): number => {
    if (size === 1) return view.getUint8(at);
    if (size === 2) return view.getUint16(at, little);
    return size === 4 ? view.getUint32(at, little) : Number(view.getBigUint64(at, little));
  };
}

/**
 * The first value of each tag of the first picture; unknown types are left out. Empty where the file breaks off: then
 * the decoder says what is wrong.
 */
export function readTiffTags(bytes: Uint8Array): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  const read = reader(bytes);
  try {
    // BigTIFF (version 43) has offsets and counts of eight bytes where the older form has four, and two for the entries.
    const big = read(2, 2) === 43;
    const [offsetSize, entrySize] = big ? ([8, 20] as const) : ([4, 12] as const);
    const directory = read(big ? 8 : 4, offsetSize);
    const entries = directory + (big ? 8 : 2);
    const count = read(directory, big ? 8 : 2);
    for (let i = 0; i < count; i++) {
      const at = entries + i * entrySize;
      const size = sizes[read(at + 2, 2)];
      if (size === undefined) continue;
      const room = at + 4 + offsetSize;
      const inPlace = size * read(at + 4, offsetSize) <= offsetSize;
      found.set(read(at, 2), read(inPlace ? room : read(room, offsetSize), size));
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  return found;
}

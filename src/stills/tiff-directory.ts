import type { ByteSource } from './byte-source.js';

/** Bytes of one value of each type (TIFF 6.0, 1992, section 2; 13: TIFF Tech Note 1; 16 to 18: BigTIFF). */
const sizes: Readonly<Record<number, number>> = {
  ...{
    1: 1,
    2: 1,
    3: 2,
    4: 4,
    5: 8,
    6: 1,
    7: 1,
    8: 2,
    9: 4,
    10: 8,
    11: 4,
    12: 8,
    13: 4,
    16: 8,
    17: 8,
    18: 8,
  },
};

/** What is turned round in a file of the other byte order: a fraction is two numbers of four bytes. */
const unitOf = (type: number): number => (type === 5 || type === 10 ? 4 : (sizes[type] ?? 1));

/** Tags that a directory may have: a camera writes some dozens. */
const mostEntries = 1000;

/** One tag of a picture: `bytes` holds its values, least byte first; the first only where they were too long to be read. */
export interface Entry {
  readonly tag: number;
  readonly type: number;
  readonly count: number;
  readonly bytes: Uint8Array;
}

/** How a file is laid out, and where its first directory lies. */
export interface Form {
  readonly little: boolean;
  /** Offsets of eight bytes (BigTIFF). */
  readonly big: boolean;
  readonly first: number;
}

function numberAt(bytes: Uint8Array, at: number, size: number, little: boolean): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (size === 1) return view.getUint8(at);
  if (size === 2) return view.getUint16(at, little);
  return size === 4 ? view.getUint32(at, little) : Number(view.getBigUint64(at, little));
}

/** @throws RangeError for a file that breaks off */
export function formOf(source: ByteSource): Form {
  const head = source.read(0, 8);
  const little = head[0] === 0x49;
  const big = numberAt(head, 2, 2, little) === 43;
  const first = big ? numberAt(source.read(8, 8), 0, 8, little) : numberAt(head, 4, 4, little);
  return { little, big, first };
}

/** Whether all values of a tag were read. */
export const isWhole = ({ type, count, bytes }: Entry): boolean =>
  bytes.length === count * (sizes[type] ?? 0);

/** Values as they are kept, least byte first: turned round in place. */
function turned(bytes: Uint8Array, unit: number, little: boolean): Uint8Array {
  if (little || unit === 1) return bytes;
  for (let at = 0; at + unit <= bytes.length; at += unit) bytes.subarray(at, at + unit).reverse();
  return bytes;
}

/**
 * The tags of a directory, one after the other; types that no standard names are left out.
 * @param most bytes of a tag's value up to which it is read whole; of a longer one the first value only
 * @throws RangeError where the file breaks off
 */
export function* directoryEntries(source: ByteSource, { little, big }: Form, at: number, most: number) {
  const [offsetSize, entrySize, countSize] = big ? [8, 20, 8] : [4, 12, 2];
  const count = numberAt(source.read(at, countSize), 0, countSize, little);
  for (let i = 0; i < Math.min(count, mostEntries); i++) {
    const row = source.read(at + countSize + i * entrySize, entrySize);
    const type = numberAt(row, 2, 2, little);
    const size = sizes[type];
    if (size === undefined) continue;
    const values = numberAt(row, 4, offsetSize, little);
    const wanted = size * values <= most ? size * values : size;
    const place = 4 + offsetSize;
    const bytes =
      size * values <= offsetSize
        ? row.subarray(place, place + size * values)
        : source.read(numberAt(row, place, offsetSize, little), wanted);
    const entry: Entry = {
      tag: numberAt(row, 0, 2, little),
      type,
      count: values,
      bytes: turned(Uint8Array.from(bytes), unitOf(type), little),
    };
    yield entry;
  }
}

/** The first value of a tag as a number; undefined where it has none. */
export function firstNumber({ type, bytes }: Entry): number | undefined {
  const size = sizes[type];
  return [1, 3, 4, 13, 16].includes(type) && bytes.length >= size
    ? numberAt(bytes, 0, size, true)
    : undefined;
}

/**
 * A directory of a little-endian file with offsets of four bytes, its values after it; no other follows.
 * @param at where in the file it will lie, an even number
 */
export function directoryBytes(entries: readonly Entry[], at: number): Uint8Array {
  const rows = [...entries].sort((a, b) => a.tag - b.tag);
  const even = (length: number) => length + (length % 2);
  const head = 2 + 12 * rows.length + 4;
  const far = ({ bytes }: Entry) => (bytes.length > 4 ? even(bytes.length) : 0);
  const out = new Uint8Array(rows.reduce((length, row) => length + far(row), even(head)));
  const view = new DataView(out.buffer);
  view.setUint16(0, rows.length, true);
  let place = even(head);
  rows.forEach((row, i) => {
    const from = 2 + 12 * i;
    view.setUint16(from, row.tag, true);
    view.setUint16(from + 2, row.type, true);
    view.setUint32(from + 4, row.count, true);
    if (far(row) === 0) out.set(row.bytes, from + 8);
    else {
      view.setUint32(from + 8, at + place, true);
      out.set(row.bytes, place);
      place += far(row);
    }
  });
  return out;
}

/** A tag with one number of four bytes. */
export function longEntry(tag: number, value: number): Entry {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setUint32(0, value, true);
  return { tag, type: 4, count: 1, bytes };
}

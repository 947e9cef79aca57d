import { type ByteSource, sourceOfBytes } from '../byte-source.js';
import {
  directoryBytes,
  directoryEntries,
  type Entry,
  firstNumber,
  type Form,
  formOf,
  isWhole,
  longEntry,
} from '../tiff-directory.js';
import { ascii, joined } from './carried.js';

/** Tags that lead to further directories: of the exposure, and of the place. */
const pointers = { exif: 34665, gps: 34853 } as const;

/** Tags of a picture that tell of camera, people, date and rights, and not of how its numbers lie in the file. */
const telling = new Set([269, 270, 271, 272, 285, 305, 306, 315, 316, 33432]);

export const isTelling = (tag: number): boolean => telling.has(tag);

/**
 * What does not go along: the orientation, since the picture is upright by now; the picture's size, which it says itself;
 * and a directory about other cameras' files, whose offsets would no longer be right.
 */
const dropped = new Set([274, 40962, 40963, 40965]);

/** Bytes of one tag, and of all together: what is longer, or comes after, is left out. */
const most = { tag: 1_000_000, all: 4_000_000 };

/** The tags that go along with a picture, directory by directory; a thumbnail, which would show it as it was, does not. */
export interface TagBlock {
  readonly picture: readonly Entry[];
  readonly exif: readonly Entry[];
  readonly gps: readonly Entry[];
}

/** @param keeps which tags of the picture's own directory go along */
function readBlock(source: ByteSource, keeps: (tag: number) => boolean): TagBlock {
  const block = { picture: [] as Entry[], exif: [] as Entry[], gps: [] as Entry[] };
  let room = most.all;
  function read(list: Entry[], form: Form, at: number, keep: (tag: number) => boolean): void {
    for (const entry of directoryEntries(source, form, at, most.tag)) {
      const directory = firstNumber(entry);
      if (list === block.picture && entry.tag === pointers.exif)
        read(block.exif, form, directory ?? 0, () => true);
      else if (list === block.picture && entry.tag === pointers.gps)
        read(block.gps, form, directory ?? 0, () => true);
      else if (keep(entry.tag) && !dropped.has(entry.tag) && isWhole(entry) && entry.bytes.length <= room) {
        list.push(entry);
        room -= entry.bytes.length;
      }
    }
  }
  try {
    const form = formOf(source);
    read(block.picture, form, form.first, keeps);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error; // it breaks off: what was read is kept
  }
  return block;
}

/** The tags of an EXIF block. */
export const tagsOfExif = (exif: Uint8Array): TagBlock => readBlock(sourceOfBytes(exif), () => true);

/** The tags of a TIFF that are not about how it is stored. */
export const tagsOfTiff = (source: ByteSource): TagBlock => readBlock(source, isTelling);

/**
 * Directories one after the other, the picture's own last.
 * @param at where in the file they will lie, an even number
 * @returns the bytes, and where the picture's own directory lies in the file
 */
export function blockBytes(
  { picture, exif, gps }: TagBlock,
  at: number,
): { bytes: Uint8Array; directory: number } {
  const bytes: Uint8Array[] = [];
  const links: Entry[] = [];
  let end = at;
  function add(entries: readonly Entry[]): number {
    const start = end;
    bytes.push(directoryBytes(entries, start));
    end += bytes[bytes.length - 1].length;
    return start;
  }
  if (exif.length > 0) links.push(longEntry(pointers.exif, add(exif)));
  if (gps.length > 0) links.push(longEntry(pointers.gps, add(gps)));
  const directory = add([...picture, ...links]);
  return { bytes: joined(...bytes), directory };
}

/** A block of tags as EXIF, little-endian; undefined for one that says nothing. */
export function exifBytes(block: TagBlock): Uint8Array | undefined {
  if (block.picture.length + block.exif.length + block.gps.length === 0) return undefined;
  const { bytes, directory } = blockBytes(block, 8);
  const head = new Uint8Array(8);
  head.set(ascii('II*'));
  new DataView(head.buffer).setUint32(4, directory, true);
  return joined(head, bytes);
}

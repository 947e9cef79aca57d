import type { ByteSource } from '../byte-source.js';
import { directoryEntries, type Entry, formOf } from '../tiff-directory.js';
import { type Carried, joined } from './carried.js';
import { blockBytes, isTelling, tagsOfExif } from './exif.js';
import type { Addition } from './into-file.js';

const [short, fraction, undefinedBytes, byte] = [3, 5, 7, 1];

const little = (Kind: typeof Uint16Array | typeof Uint32Array, values: readonly number[]) =>
  new Uint8Array(Kind.from(values).buffer);

/** A density to four decimals, as numerator and denominator. */
function densityEntries(pixelsPerInch: number): Entry[] {
  const value = Number.isInteger(pixelsPerInch)
    ? [pixelsPerInch, 1]
    : [Math.round(pixelsPerInch * 10_000), 10_000];
  const bytes = little(Uint32Array, value);
  return [
    { tag: 282, type: fraction, count: 1, bytes },
    { tag: 283, type: fraction, count: 1, bytes },
    { tag: 296, type: short, count: 1, bytes: little(Uint16Array, [2]) },
  ];
}

function ownEntries({ profile, xmp, density }: Carried): Entry[] {
  return [
    ...(profile === undefined
      ? []
      : [{ tag: 34675, type: undefinedBytes, count: profile.length, bytes: profile }]),
    ...(xmp === undefined ? [] : [{ tag: 700, type: byte, count: xmp.length, bytes: xmp }]),
    ...(density === undefined ? [] : densityEntries(density)),
  ];
}

/**
 * A TIFF as the encoder wrote it, with what is carried as tags (TIFF 6.0, 1992; ICC.1:2010, annex B.2; ISO 16684-1:2012). A
 * new directory at the end takes the place of the old one; the picture stays where it is.
 * @param tiff little-endian, offsets of four bytes
 */
export function intoTiff(tiff: ByteSource, carried: Carried): Addition {
  const block = tagsOfExif(carried.exif ?? new Uint8Array(0));
  const added = [...ownEntries(carried), ...block.picture.filter(({ tag }) => isTelling(tag))];
  const none = new Uint8Array(0);
  if (added.length + block.exif.length + block.gps.length === 0)
    return { head: none, replaces: 0, tail: none };
  const replaced = new Set(added.map(({ tag }) => tag));
  const form = formOf(tiff);
  const own = [...directoryEntries(tiff, form, form.first, Infinity)].filter(({ tag }) => !replaced.has(tag));
  const padding = new Uint8Array(tiff.size % 2);
  const { bytes, directory } = blockBytes(
    { ...block, picture: [...own, ...added] },
    tiff.size + padding.length,
  );
  const head = Uint8Array.from(tiff.read(0, 8));
  new DataView(head.buffer).setUint32(4, directory, true);
  return { head, replaces: head.length, tail: joined(padding, bytes) };
}

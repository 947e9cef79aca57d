import { sourceOfBytes } from '../byte-source.js';
import { directoryEntries, type Entry, formOf } from '../tiff-directory.js';
import type { Carried } from './carried.js';
import { blockBytes, isTelling, tagsOfExif } from './exif.js';

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
 * @param tiff little-endian, offsets of four bytes; its header is changed
 * @returns the file in pieces
 */
export function intoTiff(tiff: Uint8Array, carried: Carried): Uint8Array[] {
  const block = tagsOfExif(carried.exif ?? new Uint8Array(0));
  const added = [...ownEntries(carried), ...block.picture.filter(({ tag }) => isTelling(tag))];
  if (added.length + block.exif.length + block.gps.length === 0) return [tiff];
  const replaced = new Set(added.map(({ tag }) => tag));
  const source = sourceOfBytes(tiff);
  const form = formOf(source);
  const own = [...directoryEntries(source, form, form.first, Infinity)].filter(
    ({ tag }) => !replaced.has(tag),
  );
  const padding = new Uint8Array(tiff.length % 2);
  const { bytes, directory } = blockBytes(
    { ...block, picture: [...own, ...added] },
    tiff.length + padding.length,
  );
  new DataView(tiff.buffer, tiff.byteOffset).setUint32(4, directory, true);
  return [tiff, padding, bytes];
}

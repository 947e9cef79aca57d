import type { Metadata } from 'sharp';
import type { ByteSource } from '../byte-source.js';
import type { Carried } from './carried.js';
import { exifBytes, tagsOfExif, tagsOfTiff } from './exif.js';

const exifName = 'Exif\0\0';

/** The block itself: in a JPEG its name stands before it. */
function withoutName(exif: Uint8Array): Uint8Array {
  const name = String.fromCharCode(...exif.subarray(0, exifName.length));
  return name === exifName ? exif.subarray(exifName.length) : exif;
}

function exifOf(header: Metadata, source: ByteSource): Uint8Array | undefined {
  if (header.format === 'tiff') return exifBytes(tagsOfTiff(source));
  return header.exif === undefined ? undefined : exifBytes(tagsOfExif(withoutName(header.exif)));
}

/** XMP says the orientation again: 1 by now, since the picture is upright. */
function uprightXmp(xmp: Uint8Array): Uint8Array {
  const buffer = Buffer.from(xmp.buffer, xmp.byteOffset, xmp.length);
  const text = buffer.toString('latin1');
  return Buffer.from(text.replace(/(?<=tiff:Orientation(?:>|\s*=\s*["']))\d/g, '1'), 'latin1');
}

/** What goes along with a picture when it is written again, once it has been turned upright. */
export function readCarried(header: Metadata, source: ByteSource): Carried {
  const exif = exifOf(header, source);
  const { icc, xmp, density } = header;
  return {
    ...(icc === undefined ? {} : { profile: Uint8Array.from(icc) }),
    ...(exif === undefined ? {} : { exif }),
    ...(xmp === undefined ? {} : { xmp: uprightXmp(xmp) }),
    ...(density === undefined ? {} : { density }),
  };
}

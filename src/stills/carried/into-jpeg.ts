import type { ByteSource } from '../byte-source.js';
import { ascii, bigEndian, type Carried, joined } from './carried.js';
import type { Addition } from './into-file.js';

/** A segment's length counts its own two bytes. */
const mostBytes = 65535 - 2;

function segment(marker: number, data: Uint8Array): Uint8Array {
  return joined(Uint8Array.of(0xff, marker), bigEndian(data.length + 2, 2), data);
}

/** APP0 of JFIF 1.02 (1992), without a thumbnail: pixels an inch, both ways. */
function density(pixelsPerInch: number): Uint8Array {
  const perInch = bigEndian(Math.min(65535, Math.round(pixelsPerInch)), 2);
  return segment(
    0xe0,
    joined(ascii('JFIF\0'), Uint8Array.of(1, 2, 1), perInch, perInch, Uint8Array.of(0, 0)),
  );
}

const profileName = ascii('ICC_PROFILE\0');

/** ICC.1:2010, annex B.4: in pieces that are numbered. */
function profileSegments(profile: Uint8Array): Uint8Array[] {
  const most = mostBytes - profileName.length - 2;
  const count = Math.ceil(profile.length / most);
  return Array.from({ length: count }, (_, i) =>
    segment(
      0xe2,
      joined(profileName, Uint8Array.of(i + 1, count), profile.subarray(i * most, (i + 1) * most)),
    ),
  );
}

const exifName = ascii('Exif\0\0');
const xmpName = ascii('http://ns.adobe.com/xap/1.0/\0');

const fits = (name: Uint8Array, data: Uint8Array | undefined): data is Uint8Array =>
  data !== undefined && name.length + data.length <= mostBytes;

/** What a JPEG has no room for: blocks beyond 64 kB; profiles may go over many segments. */
export function tooLargeForJpeg({ exif, xmp }: Carried): string[] {
  return [
    ...(exif !== undefined && !fits(exifName, exif) ? ['EXIF'] : []),
    ...(xmp !== undefined && !fits(xmpName, xmp) ? ['XMP'] : []),
  ];
}

/** Bytes of the APP0 segment that the encoder may have written, behind the marker that begins the file. */
function ownHead(jpeg: ByteSource): number {
  const [marker, app0, high, low] = jpeg.read(2, 4);
  return marker === 0xff && app0 === 0xe0 ? 2 + 256 * high + low : 0;
}

/**
 * A JPEG as the encoder wrote it, with what is carried in segments of its own (ITU-T T.81; Exif 2.3; ISO 16684-1:2012).
 */
export function intoJpeg(jpeg: ByteSource, carried: Carried): Addition {
  const { profile, exif, xmp } = carried;
  const segments: Uint8Array[] = [];
  let replaces = 2;
  if (carried.density !== undefined) {
    segments.push(density(carried.density));
    replaces += ownHead(jpeg);
  }
  if (fits(exifName, exif)) segments.push(segment(0xe1, joined(exifName, exif)));
  if (fits(xmpName, xmp)) segments.push(segment(0xe1, joined(xmpName, xmp)));
  if (profile !== undefined) segments.push(...profileSegments(profile));
  return { head: joined(jpeg.read(0, 2), ...segments), replaces, tail: new Uint8Array(0) };
}

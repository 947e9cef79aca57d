import { deflateSync } from 'node:zlib';
import type { ByteSource } from '../byte-source.js';
import { ascii, bigEndian, type Carried, joined } from './carried.js';
import type { Addition } from './into-file.js';

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/** ISO/IEC 15948:2004, annex D. */
function crc(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = crcTable[(c ^ byte) & 255] ^ (c >>> 8);
  return ~c >>> 0;
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const named = joined(ascii(name), data);
  return joined(bigEndian(data.length, 4), named, bigEndian(crc(named), 4));
}

const metresPerInch = 0.0254;

/** pHYs: pixels a metre, both ways. */
function density(pixelsPerInch: number): Uint8Array {
  const perMetre = bigEndian(Math.round(pixelsPerInch / metresPerInch), 4);
  return chunk('pHYs', joined(perMetre, perMetre, Uint8Array.of(1)));
}

/** Signature and header, IHDR, always have so many bytes. */
const headBytes = 8 + 25;

const physBytes = 21;

/** Bytes of the density that the encoder may have said itself, behind the header. */
function ownDensity(png: ByteSource): number {
  const name = String.fromCharCode(...png.read(headBytes + 4, 4));
  return name === 'pHYs' ? physBytes : 0;
}

/**
 * A PNG as the encoder wrote it, with what is carried in chunks of its own (ISO/IEC 15948:2004; eXIf: W3C PNG, third
 * edition; XMP: ISO 16684-1:2012).
 */
export function intoPng(png: ByteSource, carried: Carried): Addition {
  const { profile, exif, xmp } = carried;
  const zeros = Uint8Array.of(0, 0);
  const chunks: Uint8Array[] = [];
  if (profile !== undefined) chunks.push(chunk('iCCP', joined(ascii('icc'), zeros, deflateSync(profile))));
  if (carried.density !== undefined) chunks.push(density(carried.density));
  if (exif !== undefined) chunks.push(chunk('eXIf', exif));
  if (xmp !== undefined)
    chunks.push(chunk('iTXt', joined(ascii('XML:com.adobe.xmp'), zeros, Uint8Array.of(0, 0, 0), xmp)));
  return {
    head: joined(png.read(0, headBytes), ...chunks),
    replaces: headBytes + (carried.density === undefined ? 0 : ownDensity(png)),
    tail: new Uint8Array(0),
  };
}

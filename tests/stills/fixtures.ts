import { deflateSync } from 'node:zlib';
import sharp from 'sharp';

/** Stills made byte by byte, so that what must be read is known without any decoder or encoder. */

const crcTable = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crc = (bytes: Uint8Array) =>
  ~bytes.reduce((c, byte) => crcTable[(c ^ byte) & 255] ^ (c >>> 8), ~0) >>> 0;

/** A PNG chunk (ISO/IEC 15948:2004, 5.3). */
export function chunk(name: string, data: Uint8Array): Buffer {
  const out = Buffer.alloc(12 + data.length);
  out.writeUInt32BE(data.length, 0);
  out.write(name, 4, 'latin1');
  out.set(data, 8);
  out.writeUInt32BE(crc(out.subarray(4, 8 + data.length)), 8 + data.length);
  return out;
}

interface PngParts {
  readonly width: number;
  readonly height: number;
  readonly bits: number;
  /** 0 grey, 2 RGB, 3 palette, 4 grey + alpha, 6 RGBA. */
  readonly colourType: number;
  /** Rows, each after its filter byte (0). */
  readonly rows: readonly number[];
  readonly chunks?: readonly Buffer[];
}

export function png({ width, height, bits, colourType, rows, chunks = [] }: PngParts): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = bits;
  header[9] = colourType;
  const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
  const data = chunk('IDAT', deflateSync(Uint8Array.from(rows)));
  return Buffer.concat([signature, chunk('IHDR', header), ...chunks, data, chunk('IEND', Buffer.alloc(0))]);
}

interface TiffParts {
  readonly width: number;
  readonly height: number;
  readonly samples: number;
  readonly bits: number;
  readonly photometric: number;
  readonly data: Uint8Array;
  /** Further tags: number, type (1 byte, 2 ASCII, 3 short, 4 long), values. */
  readonly more?: readonly (readonly [tag: number, type: number, values: readonly number[]])[];
  readonly bigEndian?: boolean;
  /** Offset of a second directory: 'again' repeats this one as a second page. */
  readonly next?: 'again';
}

/** An uncompressed TIFF of one strip (TIFF 6.0, 1992). */
export function tiff(parts: TiffParts): Buffer {
  const { width, height, samples, bits, photometric, data, more = [], bigEndian = false } = parts;
  const sizes: Record<number, number> = { 1: 1, 2: 1, 3: 2, 4: 4 };
  const dataAt = 2048;
  const entries = [
    [256, 3, [width]],
    [257, 3, [height]],
    [258, 3, Array<number>(samples).fill(bits)],
    [259, 3, [1]],
    [262, 3, [photometric]],
    [273, 4, [dataAt]],
    [277, 3, [samples]],
    [278, 3, [height]],
    [279, 4, [data.length]],
    ...more,
  ] as [number, number, number[]][];
  entries.sort((a, b) => a[0] - b[0]);
  const out = Buffer.alloc(dataAt + data.length);
  const put = (value: number, at: number, size: number) =>
    bigEndian ? out.writeUIntBE(value, at, size) : out.writeUIntLE(value, at, size);
  out.write(bigEndian ? 'MM' : 'II', 0, 'latin1');
  put(42, 2, 2);
  put(8, 4, 4);
  const directory = (start: number, next: number, far: number) => {
    put(entries.length, start, 2);
    entries.forEach(([tag, type, values], i) => {
      const at = start + 2 + 12 * i;
      const long = values.length * sizes[type] > 4;
      put(tag, at, 2);
      put(type, at + 2, 2);
      put(values.length, at + 4, 4);
      if (long) put(far, at + 8, 4);
      values.forEach((value, k) => put(value, (long ? far : at + 8) + k * sizes[type], sizes[type]));
      if (long) far += values.length * sizes[type];
    });
    put(next, start + 2 + 12 * entries.length, 4);
  };
  directory(8, parts.next === 'again' ? 1024 : 0, 300);
  if (parts.next === 'again') directory(1024, 0, 1300);
  out.set(data, dataAt);
  return out;
}

/** Bytes of 16-bit numbers. */
export function shorts(values: readonly number[], bigEndian = false): Buffer {
  const out = Buffer.alloc(2 * values.length);
  values.forEach((value, i) =>
    bigEndian ? out.writeUInt16BE(value, 2 * i) : out.writeUInt16LE(value, 2 * i),
  );
  return out;
}

/** A TIFF of numbers in floating point, 32 bits. */
export function floatTiffFile(
  width: number,
  samples: 1 | 2 | 3 | 4,
  values: readonly number[],
  { bigEndian = false, more = [] }: Pick<TiffParts, 'bigEndian' | 'more'> = {},
): Buffer {
  const data = Buffer.alloc(4 * values.length);
  values.forEach((value, i) =>
    bigEndian ? data.writeFloatBE(value, 4 * i) : data.writeFloatLE(value, 4 * i),
  );
  const alpha: TiffParts['more'] = samples % 2 === 0 ? [[338, 3, [2]]] : [];
  return tiff({
    ...{ width, height: values.length / samples / width, samples, bits: 32, data, bigEndian },
    photometric: samples < 3 ? 1 : 2,
    more: [[339, 3, Array<number>(samples).fill(3)], ...alpha, ...more],
  });
}

/** A JPEG of one colour, grey or RGB, made by libvips. */
export async function jpeg(width: number, height: number, colour: readonly number[]): Promise<Buffer> {
  const data = Uint8Array.from(
    { length: width * height * colour.length },
    (_, i) => colour[i % colour.length],
  );
  const still = sharp(data, { raw: { width, height, channels: colour.length as 1 | 3 } });
  return still
    .toColourspace(colour.length === 1 ? 'b-w' : 'srgb')
    .jpeg({ quality: 95 })
    .toBuffer();
}

/** A colour profile with primaries of its own (P3), as libvips writes it into a file. */
export async function someProfile(): Promise<Buffer> {
  const still = sharp({ create: { width: 1, height: 1, channels: 3, background: 'red' } });
  const file = await still.withIccProfile('p3').png().toBuffer();
  const { icc } = await sharp(file).metadata();
  if (icc === undefined) throw new Error('libvips wrote no profile');
  return icc;
}

/** A colour profile of only a header and a name: version 2 (`desc`) or 4 (`mluc`). */
export function namedProfile(name: string, version: 2 | 4): Buffer {
  const text = version === 2 ? Buffer.from(`${name}\0`, 'latin1') : Buffer.from(name, 'utf16le').swap16();
  const body = Buffer.alloc(version === 2 ? 12 : 28);
  body.write(version === 2 ? 'desc' : 'mluc', 0, 'latin1');
  if (version === 2) body.writeUInt32BE(text.length, 8);
  else [1, 12, 0x656e5553, text.length, 28].forEach((value, i) => body.writeUInt32BE(value, 8 + 4 * i));
  const head = Buffer.alloc(144);
  head.writeUInt32BE(1, 128);
  head.write('desc', 132, 'latin1');
  head.writeUInt32BE(144, 136);
  head.writeUInt32BE(body.length + text.length, 140);
  return Buffer.concat([head, body, text]);
}

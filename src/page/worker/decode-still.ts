import { decode as decodePng, hasPngSignature } from 'fast-png';
import { decode as decodeTiff } from 'tiff';
import { InputError } from '../../errors/input-error.js';
import { type FloatPicture, floatsToCodes } from '../../picture/float-picture.js';
import { makePicture, type Picture } from '../../picture/picture.js';
import { refuseIf, tiffRefusal, valuesRefusal } from '../../stills/check-still.js';
import { sourceOfBytes } from '../../stills/byte-source.js';
import { type StillKind, stillKind } from '../../stills/still-kind.js';
import { readTiffTags } from '../../stills/tiff-tags.js';
import { requireUsualSize } from './picture-size.js';

type Channels = Picture['channels'];
type Codes = Uint8Array | Uint16Array;

/** Palette indices or low depths spread to whole bytes, so that the last code is 255. */
function expandPng(png: ReturnType<typeof decodePng>): { channels: Channels; data: Codes } {
  const { width, height, depth, palette, data } = png;
  const pixels = width * height;
  if (palette !== undefined) {
    const channels = palette[0]?.length === 4 ? 4 : 3;
    const out = new Uint8Array(pixels * channels);
    const indices = depth === 8 ? data : unpack(data, width, height, depth);
    for (let i = 0; i < pixels; i++) out.set(palette[indices[i]] ?? [], i * channels);
    return { channels, data: out };
  }
  if (depth >= 8)
    return {
      channels: png.channels as Channels,
      data: data instanceof Uint8ClampedArray ? new Uint8Array(data) : data,
    };
  const scale = 255 / (2 ** depth - 1);
  return { channels: 1, data: unpack(data, width, height, depth).map((value) => value * scale) };
}

/** Samples of less than a byte, rows padded to whole bytes. */
function unpack(data: ArrayLike<number>, width: number, height: number, depth: number): Uint8Array {
  const out = new Uint8Array(width * height);
  const rowBytes = Math.ceil((width * depth) / 8);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const bit = x * depth;
      const byte = data[y * rowBytes + (bit >> 3)];
      out[y * width + x] = (byte >> (8 - depth - (bit & 7))) & (2 ** depth - 1);
    }
  return out;
}

function fromPng(bytes: Uint8Array): Picture {
  if (!hasPngSignature(bytes)) throw new RangeError('no PNG');
  const png = decodePng(bytes, { checkCrc: true });
  const { channels, data } = expandPng(png);
  return makePicture(png.width, png.height, { channels, bits: data.BYTES_PER_ELEMENT === 2 ? 16 : 8 }, data);
}

function fromTiff(bytes: Uint8Array, file: string): Picture {
  const found = readTiffTags(sourceOfBytes(bytes));
  refuseIf(file, tiffRefusal(found));
  if ((found.get(284) ?? 1) !== 1 && (found.get(277) ?? 1) > 1)
    throw new InputError({
      file,
      what: 'holds its colours in separate planes, which the page does not read',
      hint: 'Save it with interleaved pixels, or use the commands.',
    });
  const [first] = decodeTiff(bytes, { pages: [0] });
  const { width, height, bitsPerSample, samplesPerPixel, data } = first;
  if (data instanceof Float32Array) {
    const floats: FloatPicture = { width, height, channels: samplesPerPixel as 1 | 3 | 4, data };
    refuseIf(file, valuesRefusal(floats));
    return floatsToCodes(floats);
  }
  const bits = bitsPerSample === 16 ? 16 : 8;
  const codes: Codes = bits === 16 ? (data as Uint16Array) : new Uint8Array(data);
  return makePicture(width, height, { channels: samplesPerPixel as Channels, bits }, codes);
}

/** The browser decodes JPEG; colours are kept as they are, and the picture is turned upright. */
async function fromJpeg(bytes: Uint8Array): Promise<Picture> {
  const bitmap = await createImageBitmap(new Blob([bytes.slice()], { type: 'image/jpeg' }), {
    colorSpaceConversion: 'none',
    premultiplyAlpha: 'none',
    imageOrientation: 'from-image',
  });
  const { width, height } = bitmap;
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true })!;
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  const { data } = context.getImageData(0, 0, width, height);
  const rgb = new Uint8Array(width * height * 3);
  for (let from = 0, to = 0; to < rgb.length; from += 4, to += 3) {
    rgb[to] = data[from];
    rgb[to + 1] = data[from + 1];
    rgb[to + 2] = data[from + 2];
  }
  return makePicture(width, height, { channels: 3, bits: 8 }, rgb);
}

const decoders: Readonly<Record<StillKind, (bytes: Uint8Array, file: string) => Picture | Promise<Picture>>> =
  { png: fromPng, jpeg: fromJpeg, tiff: fromTiff };

/**
 * A still from the bytes of a PNG, JPEG or TIFF file: code values as they are, 8 or 16 bits; floating point is rounded to 16.
 * @throws InputError for anything that is not one, too large or damaged
 */
export async function decodeStill(bytes: Uint8Array, file: string): Promise<Picture> {
  if (bytes.length === 0) throw new InputError({ file, what: 'is empty', hint: 'Was it copied to the end?' });
  const kind = stillKind(bytes);
  if (kind === undefined)
    throw new InputError({ file, what: 'is not a picture that can be read', allowed: 'PNG, JPEG and TIFF' });
  requireUsualSize(kind, bytes, file);
  try {
    return await decoders[kind](bytes, file);
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError({
      file,
      what: 'is damaged, cut short or of an unusual kind',
      hint: 'Copy it from the camera or scanner again, or save it anew as PNG or TIFF.',
    });
  }
}

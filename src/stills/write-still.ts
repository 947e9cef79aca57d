import { writeFile } from 'node:fs/promises';
import { extname } from 'node:path';
import sharp from 'sharp';
import type { Sharp } from 'sharp';
import { InputError } from '../errors/input-error.js';
import { nearestName } from '../errors/nearest-name.js';
import { changeDepth, colourChannels, hasAlpha, lastCode, makePicture } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';
import type { FloatPicture } from '../picture/float-picture.js';
import { sourceOfBytes } from './byte-source.js';
import { addToFile } from './carried/add-to-file.js';
import type { Carried } from './carried/carried.js';
import { additionFor, withAddition } from './carried/into-file.js';
import { tooLargeForJpeg } from './carried/into-jpeg.js';
import { floatTiff } from './float-tiff.js';
import type { StillKind } from './still-kind.js';
import { writingError } from './writing-error.js';

const kinds: Readonly<Record<string, StillKind>> = {
  '.png': 'png',
  '.jpg': 'jpeg',
  '.jpeg': 'jpeg',
  '.tif': 'tiff',
  '.tiff': 'tiff',
};

/**
 * PNG and TIFF lose nothing; a reel is many thousand frames, so of the settings that pack about equally the fastest are taken.
 * In the lowest bits of 16 grain is noise, which no filter before packing makes smaller; LZW would make it larger. JPEG is
 * written as finely as is of use, its colours at full resolution.
 */
export const encoders: Readonly<Record<StillKind, (still: Sharp, bits: Picture['bits']) => Sharp>> = {
  png: (still, bits) => still.png({ compressionLevel: 2, adaptiveFiltering: bits === 8 }),
  jpeg: (still) => still.jpeg({ quality: 95, chromaSubsampling: '4:4:4' }),
  tiff: (still, bits) => still.tiff({ compression: bits === 8 ? 'lzw' : 'deflate', predictor: 'horizontal' }),
};

/**
 * The format that a file name asks for by its extension.
 * @throws InputError for any other
 */
export function kindOfName(path: string): StillKind {
  const extension = extname(path).toLowerCase();
  const kind = kinds[extension];
  if (kind !== undefined) return kind;
  const near = nearestName(extension, Object.keys(kinds));
  throw new InputError({
    file: path,
    what:
      extension === '' ? 'has no extension to tell the format' : `"${extension}" is not a format for stills`,
    allowed: Object.keys(kinds).join(', '),
    ...(near === undefined || extension === '' ? {} : { hint: `Did you mean "${near}"?` }),
  });
}

function isOpaque({ channels, bits, data }: Picture): boolean {
  for (let i = channels - 1; i < data.length; i += channels) if (data[i] !== lastCode(bits)) return false;
  return true;
}

function withoutAlpha(picture: Picture): Picture {
  const colours = picture.channels === 2 ? 1 : 3;
  const out = makePicture(picture.width, picture.height, { channels: colours, bits: picture.bits });
  for (let from = 0, to = 0; to < out.data.length; from += picture.channels, to += colours)
    for (let c = 0; c < colours; c++) out.data[to + c] = picture.data[from + c];
  return out;
}

/** What JPEG can hold of a picture: 8 bits, no alpha. */
function forJpeg(picture: Picture, path: string, notes: string[]): Picture {
  if (hasAlpha(picture) && !isOpaque(picture))
    throw new InputError({ file: path, what: 'JPEG cannot hold transparency', hint: 'Write PNG or TIFF.' });
  if (picture.width > 65535 || picture.height > 65535)
    throw new InputError({
      file: path,
      what: 'JPEG cannot hold more than 65535 pixels a side',
      hint: 'Write PNG or TIFF.',
    });
  if (picture.bits === 16)
    notes.push('JPEG holds 8 bits: the 16-bit codes were rounded; PNG and TIFF keep them');
  return changeDepth(hasAlpha(picture) ? withoutAlpha(picture) : picture, 8);
}

function colourspaceOf({ channels, bits }: Picture): string {
  if (channels <= 2) return bits === 8 ? 'b-w' : 'grey16';
  return bits === 8 ? 'srgb' : 'rgb16';
}

/** Whether a profile is one of grey or RGB, as the picture is (ICC.1:2010, 7.2.6: the data colour space). */
function suits(profile: Uint8Array, picture: Pick<Picture, 'channels'>): boolean {
  const space = String.fromCharCode(...profile.subarray(16, 20));
  return space === (colourChannels(picture) === 1 ? 'GRAY' : 'RGB ');
}

/** What of a still's further data the new file can have; the rest is noted. */
function suited(
  carried: Carried,
  picture: Pick<Picture, 'channels'>,
  kind: StillKind,
  notes: string[],
): Carried {
  const { profile, exif, xmp, density } = carried;
  const fits = profile !== undefined && suits(profile, picture);
  if (profile !== undefined && !fits)
    notes.push('the colour profile does not suit the picture and was left out');
  if (kind === 'jpeg')
    for (const block of tooLargeForJpeg(carried))
      notes.push(`JPEG has no room for so much ${block}, and it was left out; PNG and TIFF keep it`);
  return { exif, xmp, density, ...(fits ? { profile } : {}) };
}

/** A picture as the encoder takes it, and what its file is to carry. */
interface Prepared {
  readonly kind: StillKind;
  readonly encoder: Sharp;
  readonly carried: Carried;
  readonly notes: readonly string[];
}

function prepare(path: string, picture: Picture, carried: Carried): Prepared {
  const kind = kindOfName(path);
  const notes: string[] = [];
  const held = kind === 'jpeg' ? forJpeg(picture, path, notes) : picture;
  const { width, height, channels, bits, data } = held;
  const source = sharp(data, { raw: { width, height, channels }, limitInputPixels: false });
  const encoder = encoders[kind](source.toColourspace(colourspaceOf(held)), bits);
  return { kind, encoder, carried: suited(carried, held, kind, notes), notes };
}

/**
 * A picture as a still file, in the format that the file's name asks for. PNG and TIFF keep code values, depth and alpha
 * exactly; what is carried is attached as it is, and nothing converted by a profile. Writes nothing.
 * @param path the name of the file to be, for its format and for messages
 * @param carried what a still that was read had beside its picture
 * @returns the file, and what the user should know, each a clause without a full stop
 * @throws InputError for an unknown extension, and for transparency or too long a side in a JPEG
 */
export async function encodeStill(
  path: string,
  picture: Picture,
  carried: Carried = {},
): Promise<{ bytes: Uint8Array; notes: readonly string[] }> {
  const { kind, encoder, carried: suits, notes } = prepare(path, picture, carried);
  const file = await encoder.toBuffer();
  return { bytes: withAddition(file, additionFor(kind, sourceOfBytes(file), suits)), notes };
}

/**
 * As {@link encodeStill}, straight into a file: a reel's frames are large, and are not held in memory once more.
 * @param file where it is written, which need not have the name `path`; what stands there is written over
 * @returns notes
 * @throws InputError as encodeStill, and errors with the system's code where the file cannot be written
 */
export async function encodeStillTo(
  file: string,
  path: string,
  picture: Picture,
  carried: Carried = {},
): Promise<readonly string[]> {
  const { kind, encoder, carried: suits, notes } = prepare(path, picture, carried);
  await encoder.toFile(file).catch((error: unknown) => {
    throw writingError(error);
  });
  addToFile(file, (source) => additionFor(kind, source, suits));
  return notes;
}

/** As {@link encodeStillTo}, of a picture in floating point into a TIFF. */
export async function encodeFloatsTo(
  file: string,
  picture: FloatPicture,
  carried: Carried = {},
): Promise<readonly string[]> {
  const notes: string[] = [];
  const suits = suited(carried, picture, 'tiff', notes);
  await writeFile(file, floatTiff(picture));
  addToFile(file, (source) => additionFor('tiff', source, suits));
  return notes;
}

// Still files to pictures and back, with their profile and orientation. Knows file formats and Node;
// not what the code values mean, or what is done with them.

import sharp from 'sharp';
import type { Metadata, SharpOptions } from 'sharp';
import { InputError } from '../errors/input-error.js';
import { turnUpright } from '../picture/orientation.js';
import { makePicture } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';
import { headerRefusal, refuseIf, tiffRefusal } from './check-still.js';
import { maxPixels } from './limits.js';
import { profileName } from './profile-name.js';
import { readStillFile } from './read-file.js';
import { stillKind } from './still-kind.js';
import { readTiffTags, tags } from './tiff-tags.js';

export interface Still {
  /** The code values as they are in the file, upright. */
  readonly picture: Picture;
  /** What the user should know, each a clause without a full stop. */
  readonly notes: readonly string[];
  /** The colour profile (ICC) of the file, for writing it again; nothing was converted by it. */
  readonly profile?: Uint8Array;
}

/** Code values are wanted as they are: no conversion by profile, no limit but ours. */
const reading: SharpOptions = { ignoreIcc: true, limitInputPixels: maxPixels };

/** The decoder's complaint as one short clause, without the names of its inner parts. */
function complaint(error: unknown): string {
  const [first] = String((error as Error).message).split('\n');
  return first
    .replace('Input buffer has corrupt header:', '')
    .replace(/^\s*\w+:\s/, '')
    .trim();
}

function damaged(file: string, error: unknown): InputError {
  const reason = complaint(error);
  return new InputError({
    file,
    what: `is damaged, cut short or of an unusual kind${reason === '' ? '' : ` (${reason})`}`,
    hint: 'Copy it from the camera or scanner again, or save it anew as PNG or TIFF.',
  });
}

async function readHeader(bytes: Uint8Array, file: string): Promise<Metadata> {
  try {
    return await sharp(bytes, { ...reading, limitInputPixels: false, failOn: 'error' }).metadata();
  } catch (error) {
    throw damaged(file, error);
  }
}

/** Raw code values, interleaved, with the number of channels the decoder gave. */
async function decodeRaw(bytes: Uint8Array, header: Metadata, failOn: SharpOptions['failOn']) {
  const deep = header.depth === 'ushort';
  const grey = header.channels <= 2;
  // At 8 bits the decoder drops the alpha of grey pictures; as RGB, three times the same grey, it keeps it.
  const space = deep ? (grey ? 'grey16' : 'rgb16') : header.channels === 1 ? 'b-w' : 'srgb';
  const { data, info } = await sharp(bytes, { ...reading, failOn })
    .toColourspace(space)
    .raw({ depth: deep ? 'ushort' : 'uchar' })
    .toBuffer({ resolveWithObject: true });
  return { data, info };
}

/** Keeps the first and last of four channels: grey and alpha. */
function greyAndAlpha(data: Uint8Array): Uint8Array {
  const out = new Uint8Array(data.length / 2);
  for (let i = 0; i < out.length; i += 2) [out[i], out[i + 1]] = [data[2 * i], data[2 * i + 3]];
  return out;
}

function toPicture(
  data: Buffer,
  info: { width: number; height: number; channels: number },
  header: Metadata,
): Picture {
  const channels = header.channels as Picture['channels'];
  const { width, height } = info;
  if (header.depth === 'ushort') {
    const aligned = data.byteOffset % 2 === 0 ? data : Uint8Array.from(data);
    const codes = new Uint16Array(aligned.buffer, aligned.byteOffset, data.length / 2);
    return makePicture(width, height, { channels, bits: 16 }, codes);
  }
  const bytes = new Uint8Array(data.buffer, data.byteOffset, data.length);
  const codes = channels === 2 && info.channels === 4 ? greyAndAlpha(bytes) : bytes;
  return makePicture(width, height, { channels, bits: 8 }, codes);
}

/** The picture as stored. What the decoder only warns of is noted; what it cannot read is refused. */
async function decodePicture(
  bytes: Uint8Array,
  header: Metadata,
  file: string,
  notes: string[],
): Promise<Picture> {
  const strict = await decodeRaw(bytes, header, 'warning').catch((error: unknown) => ({ error }));
  if (!('error' in strict)) return toPicture(strict.data, strict.info, header);
  try {
    const { data, info } = await decodeRaw(bytes, header, 'error');
    notes.push('the file is unusual or slightly damaged: look at the picture closely');
    return toPicture(data, info, header);
  } catch {
    throw damaged(file, strict.error);
  }
}

function headerNotes(header: Metadata, bytes: Uint8Array): string[] {
  const notes: string[] = [];
  if ((header.pages ?? 1) > 1) notes.push(`it holds ${header.pages} pictures; the first is used`);
  if (header.format === 'png' && isAnimated(bytes)) notes.push('it is animated; its still picture is used');
  if ((header.orientation ?? 1) > 1) notes.push('turned upright, as the file says it was held');
  if (header.icc !== undefined)
    notes.push(
      `colour profile: ${profileName(header.icc) ?? 'unnamed'}; the code values are used as they are`,
    );
  return notes;
}

/** Whether a PNG has an animation (chunk acTL, which stands before the picture's data). */
function isAnimated(bytes: Uint8Array): boolean {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const data = buffer.indexOf('IDAT', 0, 'latin1');
  return buffer.subarray(0, data).includes('acTL', 0, 'latin1');
}

/**
 * A still from the bytes of a PNG, JPEG or TIFF file, 8 or 16 bits, grey or RGB, with or without alpha (straight);
 * palettes are expanded. The first picture of several. Turned upright by its EXIF orientation. No colour is converted.
 * @param file the file's name, for messages
 * @throws InputError for anything else: wrong type, CMYK, CIELAB, floating point, camera raw, more than 120 megapixels
 *   (read from the header, before decoding), empty, damaged
 */
export async function decodeStill(bytes: Uint8Array, file: string): Promise<Still> {
  if (bytes.length === 0) throw new InputError({ file, what: 'is empty', hint: 'Was it copied to the end?' });
  const kind = stillKind(bytes);
  if (kind === undefined)
    throw new InputError({ file, what: 'is not a picture that can be read', allowed: 'PNG, JPEG and TIFF' });
  const tiff = kind === 'tiff' ? readTiffTags(bytes) : undefined;
  if (tiff !== undefined) refuseIf(file, tiffRefusal(tiff));
  const header = await readHeader(bytes, file);
  refuseIf(file, headerRefusal(header));
  const notes = headerNotes(header, bytes);
  if (tiff?.get(tags.extraSamples) === 1)
    notes.push('its colours were multiplied by alpha; that was divided out');
  const stored = await decodePicture(bytes, header, file, notes);
  const picture = turnUpright(stored, header.orientation ?? 1);
  return { picture, notes, ...(header.icc === undefined ? {} : { profile: Uint8Array.from(header.icc) }) };
}

/** A still from a file: see decodeStill. @throws InputError also for a file that cannot be read */
export async function readStill(path: string): Promise<Still> {
  return decodeStill(await readStillFile(path), path);
}

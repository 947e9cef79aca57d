// Still files to pictures and back, with their profile and orientation. Knows file formats and Node;
// not what the code values mean, or what is done with them.

import sharp from 'sharp';
import type { Metadata, SharpOptions } from 'sharp';
import { InputError } from '../errors/input-error.js';
import { countOdd, type FloatPicture, floatsToCodes } from '../picture/float-picture.js';
import { turnUpright } from '../picture/orientation.js';
import { makePicture } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';
import { type ByteSource, sourceOfBytes } from './byte-source.js';
import type { Carried } from './carried/carried.js';
import { readCarried } from './carried/read-carried.js';
import { headerRefusal, isFloat, refuseIf, tiffRefusal, valuesRefusal } from './check-still.js';
import { maxPixels } from './limits.js';
import { profileName } from './profile-name.js';
import { withStillFile } from './read-file.js';
import { stillKind } from './still-kind.js';
import { readTiffTags, tags } from './tiff-tags.js';

/** Each picture is decoded once: what the decoder would keep of it is only in the way. */
sharp.cache(false);

export interface Still extends Carried {
  /** The code values as they are in the file, upright. */
  readonly picture: Picture;
  /** Of a file in floating point its own values; `picture` has them rounded to 16 bits. */
  readonly floats?: FloatPicture;
  /** What the user should know, each a clause without a full stop. */
  readonly notes: readonly string[];
}

/** What the decoder reads: bytes, or the name of a file. */
type Input = Uint8Array | string;

/** Code values are wanted as they are: no conversion by profile, no limit but ours. */
const reading: SharpOptions = { ignoreIcc: true, limitInputPixels: maxPixels };

/** The decoder's complaint as one short clause, without the names of its inner parts. */
function complaint(error: unknown): string {
  const [first] = String((error as Error).message).split('\n');
  return first
    .replace(/^Input (buffer|file) has corrupt header:/, '')
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

async function readHeader(input: Input, file: string): Promise<Metadata> {
  try {
    return await sharp(input, { ...reading, limitInputPixels: false, failOn: 'error' }).metadata();
  } catch (error) {
    throw damaged(file, error);
  }
}

/** Raw code values, interleaved, with the number of channels the decoder gave. */
async function decodeRaw(input: Input, header: Metadata, failOn: SharpOptions['failOn']) {
  if (isFloat(header)) {
    const whole = sharp(input, { ...reading, failOn }).toColourspace(header.space);
    return whole.raw({ depth: 'float' }).toBuffer({ resolveWithObject: true });
  }
  const deep = header.depth === 'ushort';
  const grey = header.channels <= 2;
  // At 8 bits the decoder drops the alpha of grey pictures; as RGB, three times the same grey, it keeps it.
  const space = deep ? (grey ? 'grey16' : 'rgb16') : header.channels === 1 ? 'b-w' : 'srgb';
  const { data, info } = await sharp(input, { ...reading, failOn })
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

/** Decodes; what the decoder only warns of is noted, and what it cannot read refused. */
async function decodeNoting(input: Input, header: Metadata, file: string, notes: string[]) {
  const strict = await decodeRaw(input, header, 'warning').catch((error: unknown) => ({ error }));
  if (!('error' in strict)) return strict;
  try {
    const decoded = await decodeRaw(input, header, 'error');
    notes.push('the file is unusual or slightly damaged: look at the picture closely');
    return decoded;
  } catch {
    throw damaged(file, strict.error);
  }
}

/** Values in floating point. @throws InputError where some are no numbers */
function toFloats(
  data: Buffer,
  { width, height }: { width: number; height: number },
  header: Metadata,
  file: string,
  notes: string[],
): FloatPicture {
  const aligned = data.byteOffset % 4 === 0 ? data : Uint8Array.from(data);
  const values = new Float32Array(aligned.buffer, aligned.byteOffset, data.length / 4);
  const floats: FloatPicture = { width, height, channels: header.channels as 1 | 3 | 4, data: values };
  refuseIf(file, valuesRefusal(floats));
  const { outside } = countOdd(floats);
  if (outside > 0)
    notes.push(`${outside} of its ${values.length} values lie outside 0 to 1, the codes from first to last`);
  return floats;
}

/** The picture as stored. */
async function decodePicture(
  input: Input,
  header: Metadata,
  file: string,
  notes: string[],
): Promise<Pick<Still, 'picture' | 'floats'>> {
  const { data, info } = await decodeNoting(input, header, file, notes);
  if (!isFloat(header)) return { picture: toPicture(data, info, header) };
  const floats = toFloats(data, info, header, file, notes);
  return { picture: floatsToCodes(floats), floats };
}

function headerNotes(header: Metadata, source: ByteSource): string[] {
  const notes: string[] = [];
  if ((header.pages ?? 1) > 1) notes.push(`it holds ${header.pages} pictures; the first is used`);
  if (header.format === 'png' && isAnimated(source)) notes.push('it is animated; its still picture is used');
  if ((header.orientation ?? 1) > 1) notes.push('turned upright, as the file says it was held');
  if (header.icc !== undefined)
    notes.push(
      `colour profile: ${profileName(header.icc) ?? 'unnamed'}; the code values are used as they are`,
    );
  return notes;
}

/** Whether a PNG has an animation (chunk acTL, which stands before the picture's data). */
function isAnimated(source: ByteSource): boolean {
  try {
    for (let at = 8; ;) {
      const head = Buffer.from(source.read(at, 8));
      const name = head.toString('latin1', 4);
      if (name === 'acTL' || name === 'IDAT') return name === 'acTL';
      at += 12 + head.readUInt32BE(0);
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return false; // it breaks off
  }
}

async function decode(input: Input, source: ByteSource, file: string): Promise<Still> {
  if (source.size === 0) throw new InputError({ file, what: 'is empty', hint: 'Was it copied to the end?' });
  const kind = stillKind(source.read(0, Math.min(16, source.size)));
  if (kind === undefined)
    throw new InputError({ file, what: 'is not a picture that can be read', allowed: 'PNG, JPEG and TIFF' });
  const tiff = kind === 'tiff' ? readTiffTags(source) : undefined;
  if (tiff !== undefined) refuseIf(file, tiffRefusal(tiff));
  const header = await readHeader(input, file);
  refuseIf(file, headerRefusal(header));
  const notes = headerNotes(header, source);
  if (tiff?.get(tags.extraSamples) === 1)
    notes.push('its colours were multiplied by alpha; that was divided out');
  const stored = await decodePicture(input, header, file, notes);
  const { orientation = 1 } = header;
  return {
    picture: turnUpright(stored.picture, orientation),
    ...(stored.floats && { floats: turnUpright(stored.floats, orientation) }),
    notes,
    ...readCarried(header, source),
  };
}

/**
 * A still from the bytes of a PNG, JPEG or TIFF file, 8 or 16 bits, grey or RGB, with or without alpha (straight), or of a
 * TIFF in floating point of 32 bits, grey, RGB or RGBA; palettes are expanded. The first picture of several. Turned upright by its EXIF orientation. No colour is converted.
 * @param file the file's name, for messages
 * @throws InputError for anything else: wrong type, CMYK, CIELAB, other floating point, camera raw, more than 120 megapixels
 *   (read from the header, before decoding), empty, damaged
 */
export const decodeStill = (bytes: Uint8Array, file: string): Promise<Still> =>
  decode(bytes, sourceOfBytes(bytes), file);

/** A still from a file: see decodeStill. @throws InputError also for a file that cannot be read */
export const readStill = (path: string): Promise<Still> =>
  withStillFile(path, (source) =>
    // The decoder takes brackets in a name for options of its own.
    decode(path.includes('[') ? source.read(0, source.size) : path, source, path),
  );

import { extname } from 'node:path';
import sharp from 'sharp';
import type { Sharp } from 'sharp';
import { InputError } from '../errors/input-error.js';
import { nearestName } from '../errors/nearest-name.js';
import { changeDepth, hasAlpha, lastCode, makePicture } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';
import { plainTiff } from './plain-tiff.js';
import type { StillKind } from './still-kind.js';

const kinds: Readonly<Record<string, StillKind>> = {
  '.png': 'png',
  '.jpg': 'jpeg',
  '.jpeg': 'jpeg',
  '.tif': 'tiff',
  '.tiff': 'tiff',
};

/** PNG and TIFF lose nothing. JPEG is written as finely as is of use, its colours at full resolution. */
const encoders: Readonly<Record<StillKind, (still: Sharp) => Sharp>> = {
  png: (still) => still.png({ compressionLevel: 6 }),
  jpeg: (still) => still.jpeg({ quality: 95, chromaSubsampling: '4:4:4' }),
  tiff: (still) => still.tiff({ compression: 'lzw', predictor: 'horizontal' }),
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

/**
 * A picture as the bytes of a still file, in the format that the file's name asks for. PNG and TIFF keep code values, depth
 * and alpha exactly; the profile is attached as it is, and nothing converted by it. Writes nothing.
 * @param path the name of the file to be, for its format and for messages
 * @returns the bytes, and what the user should know, each a clause without a full stop
 * @throws InputError for an unknown extension, and for transparency or too long a side in a JPEG
 */
export async function encodeStill(
  path: string,
  picture: Picture,
  profile?: Uint8Array,
): Promise<{ bytes: Uint8Array; notes: string[] }> {
  const kind = kindOfName(path);
  const notes: string[] = [];
  const held = kind === 'jpeg' ? forJpeg(picture, path, notes) : picture;
  const source = sharp(plainTiff(held, profile), { limitInputPixels: false }).keepIccProfile();
  const bytes = await encoders[kind](source.toColourspace(colourspaceOf(held))).toBuffer();
  if (profile !== undefined && !(await sharp(bytes).metadata()).hasProfile)
    notes.push('the colour profile does not suit the picture and was left out');
  return { bytes: new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.length), notes };
}

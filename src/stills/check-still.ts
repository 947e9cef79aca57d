import type { Metadata } from 'sharp';
import { InputError } from '../errors/input-error.js';
import type { Problem } from '../errors/input-error.js';
import { maxPixels } from './limits.js';
import { tags } from './tiff-tags.js';

type Refusal = Omit<Problem, 'file'>;

const saveAs = 'Save it as PNG or TIFF, RGB or grey, with 8 or 16 bits.';

const cmyk: Refusal = {
  what: 'holds CMYK, amounts of printing ink and not what a camera saw',
  hint: 'Use the file from before it was prepared for print, or convert it to RGB with its profile.',
};
const lab: Refusal = { what: 'holds CIELAB colours, not code values of a camera', hint: saveAs };
const raw: Refusal = {
  what: 'is a camera raw file, not a finished picture',
  hint: 'Develop it the way the recording is made, and save that as PNG or TIFF.',
};

/** What each number of the photometric tag that is not grey, RGB, palette or YCbCr stands for. */
const photometric: Readonly<Record<number, Refusal>> = {
  5: cmyk,
  8: lab,
  9: lab,
  10: lab,
  32803: raw,
  34892: raw,
};

const float: Refusal = { what: 'holds floating point numbers, not code values', hint: saveAs };

/** Why a TIFF cannot be taken as a still, from its tags alone. */
export function tiffRefusal(found: ReadonlyMap<number, number>): Refusal | undefined {
  if (found.has(tags.rawVersion)) return raw;
  // A file whose first picture is a thumbnail of another inside: raw files of several makers are built so.
  if (((found.get(tags.subfileType) ?? 0) & 1) === 1 && found.has(tags.subPictures)) return raw;
  const byColour = photometric[found.get(tags.photometric) ?? -1];
  if (byColour !== undefined) return byColour;
  const format = found.get(tags.sampleFormat) ?? 1;
  if (format === 3) return float;
  if (format === 2) return { what: 'holds numbers with a sign, not code values', hint: saveAs };
  const bits = found.get(tags.bitsPerSample) ?? 1;
  return [1, 2, 4, 8, 16].includes(bits)
    ? undefined
    : { what: `holds ${bits} bits per sample`, hint: saveAs };
}

/** The colour spaces, as the decoder names them, in which the numbers of a file are its code values. */
const codeSpaces = new Set(['srgb', 'rgb', 'rgb16', 'b-w', 'grey16']);

/** Why a picture cannot be taken as a still, from its header. */
export function headerRefusal(header: Metadata): Refusal | undefined {
  const { width, height, space, depth, channels } = header;
  if (width * height > maxPixels)
    return {
      what: `has ${width} x ${height} pixels`,
      allowed: `${maxPixels / 1e6} megapixels at most`,
      hint: 'Make it smaller first.',
    };
  if (space === 'cmyk') return cmyk;
  if (space.startsWith('lab')) return lab;
  if (depth === 'float' || depth === 'double' || space === 'scrgb') return float;
  if (!codeSpaces.has(space) || channels > 4) return { what: 'is neither grey nor RGB', hint: saveAs };
  if (depth !== 'uchar' && depth !== 'ushort') return { what: 'holds neither 8 nor 16 bits', hint: saveAs };
  return undefined;
}

/** Throws the refusal, if there is one, with the file's name. */
export function refuseIf(file: string, refusal: Refusal | undefined): void {
  if (refusal !== undefined) throw new InputError({ file, ...refusal });
}

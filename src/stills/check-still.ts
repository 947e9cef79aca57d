import type { Metadata } from 'sharp';
import { InputError } from '../errors/input-error.js';
import type { Problem } from '../errors/input-error.js';
import { countOdd, type FloatPicture } from '../picture/float-picture.js';
import { maxFloatPixels, maxPixels } from './limits.js';
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

const float = (bits: number): Refusal => ({
  what: `holds floating point numbers of ${bits} bits`,
  allowed: '32 bits',
  hint: saveAs,
});

/** Why a TIFF of floating point numbers cannot be taken. */
function floatRefusal(found: ReadonlyMap<number, number>): Refusal | undefined {
  const bits = found.get(tags.bitsPerSample) ?? 1;
  if (bits !== 32) return float(bits);
  const only = 'Save it as grey, RGB or RGBA with straight alpha.';
  if (found.get(tags.photometric) === 0)
    return { what: 'holds floating point numbers in the negative', hint: only };
  if (found.get(tags.photometric) === 1 && found.has(tags.extraSamples))
    return { what: 'holds grey with alpha in floating point', hint: only };
  if (found.get(tags.extraSamples) === 1)
    return { what: 'holds floating point numbers multiplied by alpha', hint: only };
  return undefined;
}

/** Why a TIFF cannot be taken as a still, from its tags alone. */
export function tiffRefusal(found: ReadonlyMap<number, number>): Refusal | undefined {
  if (found.has(tags.rawVersion)) return raw;
  // A file whose first picture is a thumbnail of another inside: raw files of several makers are built so.
  if (((found.get(tags.subfileType) ?? 0) & 1) === 1 && found.has(tags.subPictures)) return raw;
  const byColour = photometric[found.get(tags.photometric) ?? -1];
  if (byColour !== undefined) return byColour;
  const format = found.get(tags.sampleFormat) ?? 1;
  if (format === 3) return floatRefusal(found);
  if (format === 2) return { what: 'holds numbers with a sign, not code values', hint: saveAs };
  const bits = found.get(tags.bitsPerSample) ?? 1;
  return [1, 2, 4, 8, 16].includes(bits)
    ? undefined
    : { what: `holds ${bits} bits per sample`, hint: saveAs };
}

/** The colour spaces, as the decoder names them, in which the numbers of a file are its code values. */
const codeSpaces = new Set(['srgb', 'rgb', 'rgb16', 'b-w', 'grey16']);

/** Whether the decoder gives floating point numbers that are code values. */
export const isFloat = ({ depth, space }: Metadata): boolean =>
  depth === 'float' && (space === 'scrgb' || space === 'b-w');

/** Why a picture cannot be taken as a still, from its header. */
export function headerRefusal(header: Metadata): Refusal | undefined {
  const { width, height, space, depth, channels } = header;
  const floats = isFloat(header);
  const most = floats ? maxFloatPixels : maxPixels;
  if (width * height > most)
    return {
      what: `has ${width} x ${height} pixels`,
      allowed: `${most / 1e6} megapixels at most${floats ? ' in floating point' : ''}`,
      hint: 'Make it smaller first.',
    };
  if (space === 'cmyk') return cmyk;
  if (space.startsWith('lab')) return lab;
  if (floats && [1, 3, 4].includes(channels)) return undefined;
  if (!codeSpaces.has(space) || channels > 4) return { what: 'is neither grey nor RGB', hint: saveAs };
  if (depth !== 'uchar' && depth !== 'ushort') return { what: 'holds neither 8 nor 16 bits', hint: saveAs };
  return undefined;
}

/** Why values in floating point cannot be taken: some are no numbers, and say no colour. */
export function valuesRefusal(floats: FloatPicture): Refusal | undefined {
  const { notFinite } = countOdd(floats);
  if (notFinite === 0) return undefined;
  return {
    what: `holds ${notFinite} values that are infinite or no numbers, of ${floats.data.length}`,
    hint: 'Save it anew without them.',
  };
}

/** Throws the refusal, if there is one, with the file's name. */
export function refuseIf(file: string, refusal: Refusal | undefined): void {
  if (refusal !== undefined) throw new InputError({ file, ...refusal });
}

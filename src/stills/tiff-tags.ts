import type { ByteSource } from './byte-source.js';
import { directoryEntries, firstNumber, formOf } from './tiff-directory.js';

/** Tags of a TIFF's first picture that decide how its numbers are to be read (TIFF 6.0, 1992, and its supplements). */
export const tags = {
  subfileType: 254,
  bitsPerSample: 258,
  photometric: 262,
  extraSamples: 338,
  sampleFormat: 339,
  subPictures: 330,
  rawVersion: 50706,
} as const;

/** Only the first value of a tag counts here: longer ones are not read whole. */
const mostBytes = 64;

/**
 * The first value of each tag of the first picture that is a whole number; other tags are left out. Empty where the file
 * breaks off: then the decoder says what is wrong.
 */
export function readTiffTags(source: ByteSource): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  try {
    const form = formOf(source);
    for (const entry of directoryEntries(source, form, form.first, mostBytes)) {
      const value = firstNumber(entry);
      if (value !== undefined) found.set(entry.tag, value);
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  return found;
}

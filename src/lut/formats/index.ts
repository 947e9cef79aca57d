// formats/ knows how a LUT is written down as bytes. It must not know where the bytes come from or go to.

import { InputError } from '../../errors/input-error.js';
import { commonLutFormat } from './common-lut-format/index.js';
import { cube } from './cube/index.js';
import type { LutFormat } from './lut-format.js';

/** Every kind of LUT file that can be read and written. */
export const lutFormats = { cube, commonLutFormat } satisfies Record<string, LutFormat>;

/**
 * The format that a file's name asks for by its extension, capitals or not.
 * @throws InputError for any other extension
 */
export function lutFormatOf(file: string): LutFormat {
  const formats: LutFormat[] = Object.values(lutFormats);
  const format = formats.find(({ extension }) => file.toLowerCase().endsWith(extension));
  if (format) return format;
  throw new InputError({
    file,
    what: 'this is not the name of a LUT file',
    allowed: `names that end in ${formats.map(({ extension }) => extension).join(' or ')}`,
  });
}

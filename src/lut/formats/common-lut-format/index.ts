import { asciiBytes, asciiText } from '../cube/text.js';
import type { LutFormat } from '../lut-format.js';
import { createCommonLutFormatReader } from './read.js';
import { writeCommonLutFormat } from './write.js';

export const commonLutFormat: LutFormat = {
  title: 'Common LUT Format',
  source: 'S-2014-006 (CLF v3.0), SMPTE ST 2136-1:2024',
  extension: '.clf',
  titleOf: asciiText,
  createReader: createCommonLutFormatReader,
  write: writeCommonLutFormat,
  writeBytes: (lut, options) => asciiBytes(writeCommonLutFormat(lut, options)),
};

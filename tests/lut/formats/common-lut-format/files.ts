import { commonLutFormat } from '../../../../src/lut/formats/common-lut-format/index.js';
import { readProcessNodes } from '../../../../src/lut/formats/common-lut-format/read.js';

export const encode = (text: string) => new TextEncoder().encode(text);

/** A process list around the given nodes. */
export const listOf = (nodes: string, attributes = 'compCLFversion="3.0" id="x"') =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<ProcessList ${attributes}>\n${nodes}\n</ProcessList>\n`;

export function read(text: string | Uint8Array) {
  const reader = commonLutFormat.createReader('reel.clf');
  reader.write(typeof text === 'string' ? encode(text) : text);
  return reader.end();
}

/** What a file's nodes make of values, one after the other as the file says. */
export function through(nodes: string, values: readonly number[]): number[] {
  const run = Float64Array.from(values);
  for (const step of readProcessNodes(encode(listOf(nodes)), 'reel.clf')) step.run(run, values.length / 3);
  return [...run];
}

export const depths = 'inBitDepth="32f" outBitDepth="32f"';

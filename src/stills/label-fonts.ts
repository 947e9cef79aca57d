import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import opentype from 'opentype.js';
import type { LabelFonts, Typefaces } from '../preview/typeface.js';

/** Alphabets the font comes in; a name may be written in any of them, or mixed. */
const alphabets = ['latin', 'latin-ext', 'greek', 'cyrillic', 'vietnamese'] as const;

const resolver = createRequire(import.meta.url);

function loadWeight(weight: number): Typefaces {
  const load = (alphabet: string) => {
    const name = `@fontsource/source-sans-3/files/source-sans-3-${alphabet}-${weight}-normal.woff`;
    const bytes = readFileSync(resolver.resolve(name));
    return opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  };
  const [first, ...rest] = alphabets;
  return [load(first), ...rest.map(load)];
}

/** The fonts a preview is labelled with, from the font package; nothing of the system's is used. */
export function loadLabelFonts(): LabelFonts {
  return { regular: loadWeight(400), strong: loadWeight(600) };
}

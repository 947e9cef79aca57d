import opentype from 'opentype.js';
import regularUrl from '@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff?inline';
import strongUrl from '@fontsource/source-sans-3/files/source-sans-3-latin-600-normal.woff?inline';
import type { LabelFonts, Typeface } from '../../preview/typeface.js';

/** The font of a data URL. */
function parse(url: string): Typeface {
  const binary = atob(url.slice(url.indexOf(',') + 1));
  return opentype.parse(Uint8Array.from(binary, (character) => character.charCodeAt(0)).buffer);
}

let fonts: LabelFonts | undefined;

/** The fonts a preview is labelled with; they travel within the worker, so nothing is fetched. */
export const labelFonts = (): LabelFonts =>
  (fonts ??= { regular: [parse(regularUrl)], strong: [parse(strongUrl)] });

import { checkTarget, type WriteOptions } from '../files/write-beside-then-rename.js';
import type { Picture } from '../picture/picture.js';
import type { LabelFonts } from '../preview/typeface.js';

/** Refuses a picture that cannot be written, before anything is worked out. @throws InputError */
export async function checkPicture(path: string | undefined, writing: WriteOptions): Promise<void> {
  if (path === undefined) return;
  // Loaded when first needed: without a picture encoder commands start faster.
  const { kindOfName } = await import('../stills/write-still.js');
  kindOfName(path);
  await checkTarget(path, writing);
}

/** Draws what a command has found. @returns the picture's file, as its name asks */
export async function drawnFile(path: string, draw: (fonts: LabelFonts) => Picture): Promise<Uint8Array> {
  const { encodeStill } = await import('../stills/write-still.js');
  const { loadLabelFonts } = await import('../stills/label-fonts.js');
  return (await encodeStill(path, draw(loadLabelFonts()))).bytes;
}

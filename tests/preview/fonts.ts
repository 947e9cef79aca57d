import { loadLabelFonts } from '../../src/stills/label-fonts.js';

/** The fonts of the labels, loaded once. */
export const fonts = loadLabelFonts();

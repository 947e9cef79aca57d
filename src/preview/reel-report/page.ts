import type { Picture } from '../../picture/picture.js';
import type { LabelFonts } from '../typeface.js';

/** Where everything stands, pixels. */
export const pageWidth = 1600;
export const margin = 40;
const gap = 40;
export const cellWidth = (pageWidth - 2 * margin - gap) / 2;
export const spacing = 22;
export const columns = [margin, margin + cellWidth + gap] as const;

/** What the parts of the page are drawn with. */
export interface Pen {
  readonly canvas: Picture;
  readonly fonts: LabelFonts;
}

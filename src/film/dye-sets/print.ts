import { bands, dye } from './bands.js';
import type { DyeSet } from './dye-set.js';

/** Release print: narrow dyes made to be dense. */
export const print: DyeSet = {
  title: 'chromogenic print',
  source: 'representative curves of our own, drawn from memory of the trade; not measured from any stock',
  cyan: dye([1, 662, 44, 46], [0.1, 565, 45, 40], [0.14, 415, 50, 45]),
  magenta: dye([1, 545, 31, 29], [0.2, 515, 30, 25], [0.24, 428, 40, 40], [0.04, 625, 40, 60]),
  yellow: dye([1, 448, 34, 33], [0.05, 510, 25, 30]),
  base: bands([0.04, 560, 2000, 2000], [0.06, 380, 55, 55]),
};

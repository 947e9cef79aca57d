import { bands, dye } from './bands.js';
import type { DyeSet } from './dye-set.js';

/** Cleaner dyes, the cyan further into the red. */
export const reversalLate: DyeSet = {
  title: 'chromogenic reversal, late',
  source: 'representative curves of our own, drawn from memory of the trade; not measured from any stock',
  cyan: dye([1, 657, 48, 52], [0.12, 555, 45, 40], [0.13, 425, 55, 45]),
  magenta: dye([1, 547, 34, 31], [0.14, 512, 28, 28], [0.22, 432, 42, 42], [0.03, 620, 40, 60]),
  yellow: dye([1, 447, 36, 36], [0.03, 525, 25, 35]),
  base: bands([0.05, 560, 2000, 2000], [0.05, 380, 60, 60]),
};

import { bands, dye } from './bands.js';
import type { DyeSet } from './dye-set.js';

/** Peaks at the short end of their usual ranges, broad flanks, strong unwanted absorptions. */
export const reversalEarly: DyeSet = {
  title: 'chromogenic reversal, early',
  source: 'representative curves of our own, drawn from memory of the trade; not measured from any stock',
  cyan: dye([1, 645, 48, 54], [0.12, 545, 45, 40], [0.2, 420, 60, 45]),
  magenta: dye([1, 538, 36, 34], [0.16, 500, 30, 30], [0.3, 425, 45, 45], [0.05, 620, 40, 60]),
  yellow: dye([1, 440, 38, 37], [0.04, 530, 30, 40]),
  base: bands([0.05, 560, 2000, 2000], [0.06, 380, 60, 60]),
};

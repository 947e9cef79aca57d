import type { DyeSet } from './dye-set.js';
import { print } from './print.js';
import { reversalEarly } from './reversal-early.js';
import { reversalLate } from './reversal-late.js';

export type { DyeSet } from './dye-set.js';

/** The stocks that a look can name. */
export const dyeSets = {
  'reversal-early': reversalEarly,
  'reversal-late': reversalLate,
  print,
} as const satisfies Record<string, DyeSet>;

export type DyeSetName = keyof typeof dyeSets;

// The RGB primaries a look can name. Knows chromaticities; matrices are computed from them in rgb-matrix.ts.
import { acesAp1 } from './aces-ap1.js';
import { bt2020 } from './bt2020.js';
import { bt709 } from './bt709.js';
import { p3D65 } from './p3-d65.js';
import type { Primaries } from './primaries.js';

export const primaries = {
  bt709,
  bt2020,
  'p3-d65': p3D65,
  'aces-ap1': acesAp1,
} satisfies Record<string, Primaries>;

export type PrimariesName = keyof typeof primaries;
export type { Primaries } from './primaries.js';

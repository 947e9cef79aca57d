// engine/ knows how a picture's codes go through a LUT quickly. It must not know where the compiled module, the memory or
// the threads come from: the edge hands them in.

import { applyToCodes, type Samples } from '../apply-codes.js';
import type { Lut } from '../lattice.js';

/** A way to put pictures through LUTs. All of them give the same, to less than 0.02 of a code (0.1 at 16 bits). */
export interface ApplyEngine {
  readonly title: string;
  /**
   * As `applyToCodes`. A LUT must not change once it was applied.
   * @throws RangeError when the lengths do not fit, or floats meet codes
   */
  apply(lut: Lut, source: Samples, target: Samples, channels: 3 | 4): void;
}

/** Plain TypeScript: the reference, and what is left where a machine has no SIMD. */
export const plainEngine: ApplyEngine = { title: 'plain', apply: applyToCodes };

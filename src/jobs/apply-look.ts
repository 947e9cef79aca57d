import { applyToCodes } from '../lut/apply-codes.js';
import type { Lut } from '../lut/lattice.js';
import { expandGrey, type Picture } from '../picture/picture.js';

/** A still through a LUT: same size and depth, alpha kept; grey becomes colour, since a look may colour it. */
export function applyLook(lut: Lut, still: Picture): Picture {
  const source = expandGrey(still);
  const data = source.data.slice();
  applyToCodes(lut, source.data, data, source.channels as 3 | 4);
  return { ...source, data };
}

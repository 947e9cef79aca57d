import { type ApplyEngine, plainEngine } from '../lut/engine/engine.js';
import type { Lut } from '../lut/lattice.js';
import { expandGrey, type Picture } from '../picture/picture.js';

/**
 * A still through a LUT: same size and depth, alpha kept; grey becomes colour, since a look may colour it.
 * @param engine what it goes through; the edge hands in the fastest that it has
 */
export function applyLook(lut: Lut, still: Picture, engine: ApplyEngine = plainEngine): Picture {
  const source = expandGrey(still);
  const data = source === still ? source.data.slice() : source.data;
  engine.apply(lut, source.data, data, source.channels as 3 | 4);
  return { ...source, data };
}

import { type ApplyEngine, plainEngine } from '../lut/engine/engine.js';
import type { Lut } from '../lut/lattice.js';
import { expandGreyFloats, type FloatPicture } from '../picture/float-picture.js';
import { expandGrey, type Picture } from '../picture/picture.js';

/**
 * A still through a LUT: same size and depth, alpha kept; grey becomes colour, since a look may colour it.
 * @param engine what it goes through; the edge hands in the fastest that it has
 */
export function applyLook(lut: Lut, still: Picture, engine: ApplyEngine = plainEngine): Picture {
  return applyLookInPlace(lut, { ...still, data: still.data.slice() }, engine);
}

/** As {@link applyLook}, for a still that nobody needs any more: its codes are written over. */
export function applyLookInPlace(lut: Lut, still: Picture, engine: ApplyEngine = plainEngine): Picture {
  const colour = expandGrey(still);
  engine.apply(lut, colour.data, colour.data, colour.channels as 3 | 4);
  return colour;
}

/**
 * As {@link applyLookInPlace}, in floating point throughout: values outside the LUT's domain are held at its ends, and what
 * comes out is not rounded.
 */
export function applyLookToFloats(
  lut: Lut,
  still: FloatPicture,
  engine: ApplyEngine = plainEngine,
): FloatPicture {
  const colour = expandGreyFloats(still);
  engine.apply(lut, colour.data, colour.data, colour.channels as 3 | 4);
  return colour;
}

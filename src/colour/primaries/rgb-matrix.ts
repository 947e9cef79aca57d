import { diagonal3, invert3, multiply3, transform3, type Matrix3, type Triple } from '../../maths/matrix3.js';
import { cat16 } from '../adaptation.js';
import { xyzOfXy } from '../chromaticity.js';
import type { Primaries } from './primaries.js';

/** XYZ of the white of a set of primaries, Y = 1. */
export const whiteOf = (primaries: Primaries): Triple => xyzOfXy(primaries.white);

/** Linear RGB to XYZ (SMPTE RP 177:1993): the primaries in such amounts that 1 1 1 is the white with Y = 1. */
export function rgbToXyz(primaries: Primaries): Matrix3 {
  const [r, g, b] = [primaries.red, primaries.green, primaries.blue].map(([x, y]) => [x, y, 1 - x - y]);
  const columns: Matrix3 = [r[0], g[0], b[0], r[1], g[1], b[1], r[2], g[2], b[2]];
  const amounts = transform3(invert3(columns), whiteOf(primaries));
  return multiply3(columns, diagonal3(amounts));
}

/** Linear RGB of one set of primaries to that of another; the white is adapted with CAT16, so 1 1 1 goes to 1 1 1. */
export function rgbToRgb(from: Primaries, to: Primaries): Matrix3 {
  const adapted = multiply3(cat16(whiteOf(from), whiteOf(to)), rgbToXyz(from));
  return multiply3(invert3(rgbToXyz(to)), adapted);
}

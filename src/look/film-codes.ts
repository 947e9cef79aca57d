import { dyeSets } from '../film/dye-sets/index.js';
import { filmGamut } from '../film/stock.js';
import type { Look } from './look-schema.js';
import { codesOfFilm, readCamera } from './sections/camera.js';
import { stockSchema } from './sections/stock.js';

/** Draws given up on: a camera whose code values hold next to no film colours. */
const mostDraws = 200;

/**
 * Random code values, evenly spread between no light and the open gate, that the look's stock can show to its camera.
 * @param random numbers in 0..1
 * @returns up to `count` triples r g b; fewer where nearly all code values lie outside of film
 */
export function randomFilmCodes(look: Look, count: number, random: () => number): Float64Array {
  const { dyes, loss, stain } = look.stock ?? stockSchema.parse({});
  const onFilm = filmGamut({ dyes: dyeSets[dyes], loss, stain });
  const read = readCamera(look.camera);
  const { none, openGate } = codesOfFilm(look.camera);
  const draw = () => none + (openGate - none) * random();
  const codes = new Float64Array(3 * count);
  const light = new Float64Array(3);
  let found = 0;
  for (let tries = 0; tries < mostDraws * count && found < count; tries++) {
    const code = [draw(), draw(), draw()];
    light.set(code);
    read(light, 1);
    if (onFilm(light[0], light[1], light[2])) codes.set(code, 3 * found++);
  }
  return codes.subarray(0, 3 * found);
}

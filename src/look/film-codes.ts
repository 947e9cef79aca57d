import { dyeSets } from '../film/dye-sets/index.js';
import { filmAlone, withScanFlare } from '../film/scan-flare.js';
import { ageStock, filmGamut } from '../film/stock.js';
import { scanFlare } from './light-path.js';
import type { Look } from './look-schema.js';
import { codesOfFilm, readCamera } from './sections/camera.js';
import { deliveryOf, toDeliveryPrimaries, writeDelivery } from './sections/delivery.js';
import { inTurn } from './sections/section.js';
import { isAged, stockSchema } from './sections/stock.js';

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
  const read = inTurn([readCamera(look.camera), filmAlone(scanFlare(look))]);
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

const noAge = stockSchema.parse({});

/**
 * Code values of the greys that the look's film shows, from its densest to clear film: what was grey in the scene, as it has
 * aged. So a pink reel shows its greys as pinks.
 * @param steps between no light and the open gate; those that no film shows are left out
 * @returns triples r g b; undefined where the look gives back no dye and takes out no stain, so that greys are greys, and where
 * the camera's code values hold no grey that film shows
 */
export function filmGreys(
  { stock, camera }: Pick<Look, 'stock' | 'camera'>,
  steps: number,
): Float64Array | undefined {
  if (stock === undefined || !isAged(stock)) return undefined;
  const dyes = dyeSets[stock.dyes];
  const onFilm = filmGamut({ dyes, loss: noAge.loss, stain: noAge.stain });
  const { none, openGate } = codesOfFilm(camera);
  const light = Float64Array.from({ length: 3 * steps }, (_, i) => {
    return none + ((openGate - none) * Math.floor(i / 3)) / (steps - 1);
  });
  readCamera(camera)(light, steps);
  const shown = light.filter((_, i) => {
    const at = i - (i % 3);
    return onFilm(light[at], light[at + 1], light[at + 2]);
  });
  const asCamera = deliveryOf({ gamutCompression: false }, camera);
  if (shown.length === 0) return undefined;
  for (const run of [
    ageStock({ ...stock, dyes }),
    withScanFlare(scanFlare({ stock, camera })),
    toDeliveryPrimaries(asCamera),
    writeDelivery(asCamera, camera),
  ])
    run(shown, shown.length / 3);
  return shown;
}

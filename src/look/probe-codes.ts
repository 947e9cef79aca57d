import { type Camera, codesOfFilm } from './sections/camera.js';

/** Steps of a cube's edge that stand for all colours when the gamut compression is set. */
const probes = 9;

/**
 * Code values that stand for all that film can have when the gamut compression is set: a lattice, coarse, on the faces of
 * the cube from no light to the open gate. Inside lies nothing that is further from grey: of 3000 arbitrary looks three
 * had such a colour, 0.3 % further. What lies below (footroom, noise) is no colour, and must not make the compression
 * reach for it.
 */
export function probeCodes(camera: Camera): Float64Array {
  const { none, openGate } = codesOfFilm(camera);
  const code = (step: number) => none + ((openGate - none) * step) / (probes - 1);
  const codes: number[] = [];
  for (let i = 0; i < probes ** 3; i++) {
    const steps = [i, Math.floor(i / probes), Math.floor(i / probes ** 2)].map((n) => n % probes);
    if (steps.some((step) => step === 0 || step === probes - 1)) codes.push(...steps.map(code));
  }
  return Float64Array.from(codes);
}

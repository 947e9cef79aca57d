// Where things lie in the engine's memory. The caller learns what it needs from exported globals (index.ts).

/** Pixels worked on between two passes: few enough that what passes between them stays in the first cache. */
export const passPixels: i32 = 256;

/** Bytes of a work area: what a thread needs for itself. */
export const workBytes: i32 = 12 * 1024;

/** In a work area: byte offsets of corner addresses and weights, one 32-bit number a pixel each. */
export const corner1: usize = 4 * passPixels;
export const corner2: usize = 8 * passPixels;
export const weight0: usize = 12 * passPixels;
export const weight1: usize = 16 * passPixels;
export const weight2: usize = 20 * passPixels;
export const weight3: usize = 24 * passPixels;

/** In a work area: where the end of a run is written before its exact bytes are copied out. */
export const tail: usize = 28 * passPixels;

/** The first node; an address known beforehand costs nothing in a load. */
export const nodesAt: usize = 64 * 1024;

/**
 * Vectors that the passes read in every turn: a literal would be built anew each time, which takes longer. Not in a data
 * segment: threads that join later must find what was prepared.
 */
const constants: usize = 1024;

// @ts-ignore: decorator
@inline
export function constant(index: usize): v128 {
  return v128.load(constants + 16 * index);
}

// @ts-ignore: decorator
@inline
export function setConstant(index: usize, value: v128): void {
  v128.store(constants + 16 * index, value);
}

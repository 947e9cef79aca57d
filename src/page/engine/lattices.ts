// Between document and workers: what is wanted of them when something changes, and what is done with their answers.
import type { Look } from '../../look/look-schema.js';
import type { Hand } from '../worker/crew.js';
import type { FlatLattice } from '../worker/tasks.js';

/** Planes of the lattice that one call computes: few enough that a newer look never waits long. */
const rowsPerCall = 3000;

/**
 * A look's lattice, computed by several workers side by side.
 * @param isStale asked before each call; then the rest is left out
 * @returns undefined when it became stale
 */
export async function computeLattice(
  hands: readonly Hand[],
  look: Look,
  size: number,
  isStale: () => boolean,
): Promise<FlatLattice | undefined> {
  const values = new Float32Array(3 * size ** 3);
  const planes = Math.max(1, Math.min(Math.ceil(size / hands.length), Math.round(rowsPerCall / size ** 2)));
  let next = 0;
  const work = async (hand: Hand): Promise<void> => {
    while (next < size && !isStale()) {
      const from = next;
      const to = (next = Math.min(size, from + planes));
      values.set(await hand.call('latticePlanes', { look, size, from, to }), 3 * size * size * from);
    }
  };
  await Promise.all(hands.map(work));
  return next >= size && !isStale() ? { size, values } : undefined;
}

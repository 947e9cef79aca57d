import { type CodeEnds, rangeScale } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import { seededRandom } from '../../maths/random.js';
import { locate, newTetrahedron } from './tetrahedron.js';

/**
 * The normal equations of fitting a lattice B to B(y) = x for many pairs (x, y). A tetrahedral reader ties a node only
 * to those of its cell that differ by steps of one sign, so a row of the matrix has 15 entries: 7 that way, 7 the other
 * way, itself. The matrix is symmetric and the 7 that way, with the diagonal, are kept.
 */
export interface NormalEquations {
  readonly size: number;
  /** `size`^3 rows of 8: the diagonal, then the entry towards each corner 1..7 of the cell (bits: red, green, blue). */
  readonly matrix: Float64Array;
  /** `size`^3 rows of r g b. */
  readonly right: Float64Array;
  /** Mean of the diagonal over all nodes: the unit in which smoothness is weighed. */
  readonly meanWeight: number;
}

/** Colours a side that are sent through the look, per node a side: some 27 for each node. */
const coloursPerNode = 3;
const leastSteps = 48;

/**
 * Colours spread evenly over a cube, each at a random place of its own small cell. Handed on in runs.
 * @param ends codes between which the cube lies, in every channel
 */
export function spreadColours(
  steps: number,
  seed: number,
  take: (colours: Float64Array, count: number) => void,
  { black, white }: CodeEnds = rangeScale.full,
): void {
  const random = seededRandom(seed);
  const slice = new Float64Array(3 * steps * steps);
  const place = (cell: number) => black + ((white - black) * (cell + random())) / steps;
  for (let b = 0; b < steps; b++) {
    for (let i = 0, at = 0; i < steps * steps; i++) {
      slice[at++] = place(i % steps);
      slice[at++] = place(Math.floor(i / steps));
      slice[at++] = place(b);
    }
    take(slice, steps * steps);
  }
}

/** What a recording keeps of a code value: 0..1. Not a number counts as 0. */
export const recorded = (code: number): number => (code > 0 ? Math.min(code, 1) : 0);

/**
 * Sends an even spread of colours through the look and gathers the equations of the way back.
 * @param look code values in place; beyond 0..1 counts as 0 or 1, as a recording keeps it
 * @param picture codes between which the colours before the look lie
 */
export function normalEquations(look: Run, size: number, picture?: CodeEnds): NormalEquations {
  const nodes = size ** 3;
  const steps = Math.max(leastSteps, coloursPerNode * size);
  const matrix = new Float64Array(8 * nodes);
  const right = new Float64Array(3 * nodes);
  const at = newTetrahedron();
  const burnt = new Float64Array(3 * steps * steps);
  const gather = (colours: Float64Array, count: number) => {
    burnt.set(colours);
    look(burnt, count);
    for (let i = 0; i < 3 * count; i += 3) {
      locate(recorded(burnt[i]), recorded(burnt[i + 1]), recorded(burnt[i + 2]), size, at);
      for (let k = 0; k < 4; k++) {
        const weight = at.weights[k];
        const row = 8 * at.nodes[k];
        matrix[row] += weight * weight;
        for (let l = k + 1; l < 4; l++) matrix[row + at.corners[l] - at.corners[k]] += weight * at.weights[l];
        for (let c = 0; c < 3; c++) right[3 * at.nodes[k] + c] += weight * colours[i + c];
      }
    }
  };
  spreadColours(steps, 1, gather, picture);
  let sum = 0;
  for (let node = 0; node < nodes; node++) sum += matrix[8 * node];
  return { size, matrix, right, meanWeight: sum / nodes };
}

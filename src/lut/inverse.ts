import type { CodeEnds } from '../colour/signal-range.js';
import { InputError } from '../errors/input-error.js';
import { sampleLut } from './interpolate.js';
import { normalEquations } from './inverse/normal-equations.js';
import { solve } from './inverse/solve.js';
import { undoCurves } from './inverse/undo-curves.js';
import type { Lattice, Lut } from './lattice.js';
import { sampleLattice } from './lattice.js';

export type { Loss, LossJudge, Recording } from './inverse/losses.js';
export { comesBackWithin, losses, lossJudge } from './inverse/losses.js';
export type { Region, RoundTrip } from './inverse/round-trip.js';
export { families, levels, roundTrip } from './inverse/round-trip.js';

export interface UndoOptions {
  /** Nodes a side of the way back; 33 by default. */
  readonly size?: number;
  /**
   * Codes between which pictures lie before the look; the full range when left out. What lies beyond, such as the
   * headroom of legal range, would pull the fit to codes that hold no picture.
   */
  readonly picture?: CodeEnds;
}

/**
 * Weight of smoothness against fit. It only has to settle the nodes that no colour reaches: from 1e-2 to 1e-5 the
 * round trip of smooth looks stays the same to a tenth of a code.
 */
const smoothness = 1e-3;
const solveOptions = { smoothness, tolerance: 1e-5, mostSteps: 300 };

/** Sizes from coarse to fine, the last one as asked: each is the next one's start, so that few steps are needed. */
function sizesUpTo(size: number): number[] {
  const coarser = Math.ceil((size - 1) / 2) + 1;
  return size <= 9 ? [size] : [...sizesUpTo(coarser), size];
}

/** A 65-point fit takes seconds and some 100 MB; the next usual size would take minutes. */
const sizes = { least: 2, most: 65 };

function requireSize(size: number): void {
  if (Number.isInteger(size) && size >= sizes.least && size <= sizes.most) return;
  throw new InputError({
    field: 'size',
    what: `a way back cannot be fitted with ${size} points a side`,
    allowed: `whole numbers from ${sizes.least} to ${sizes.most}`,
  });
}

/**
 * The best way back from a burnt-in look: the lattice that, over all colours spread evenly, comes nearest in least
 * squares to what was recorded before the look, and is smooth where the look never leads. Its values may lie beyond
 * 0..1: a reader that interpolates first and clamps then meets the edges of what the look reaches better so.
 * A 1D LUT is read backwards, curve by curve.
 * @throws InputError for a size that is not fitted
 */
export function undo(lut: Lut, { size = 33, picture }: UndoOptions = {}): Lut {
  requireSize(size);
  if (lut.kind === '1d') return undoCurves(lut);
  const look = sampleLut(lut);
  let back: Lattice | undefined;
  for (const next of sizesUpTo(size)) {
    const start: Lattice = sampleLattice(back === undefined ? () => {} : sampleLut(back), next);
    solve(normalEquations(look, next, picture), start.values, solveOptions);
    back = start;
  }
  return back!;
}

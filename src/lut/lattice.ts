// lut/ knows transforms as functions on code values, tables of them, and the files that carry such tables.
// It must not know what a look is made of, nor disk, terminal or screen.

import { InputError } from '../errors/input-error.js';
import type { Run, Triple } from '../maths/matrix3.js';
import { limits } from './formats/limits.js';

/** A 3D LUT: what becomes of `size`^3 colours on an even lattice. */
export interface Lattice {
  readonly kind: '3d';
  /** Nodes a side, 2..256. */
  readonly size: number;
  /** Code value of the first node of each channel; below it the LUT holds its end. */
  readonly domainMin: Triple;
  /** Code value of the last node of each channel, above `domainMin`. */
  readonly domainMax: Triple;
  /** `size`^3 rows of r g b, red fastest: row = r + size g + size^2 b. */
  readonly values: Float64Array;
}

/** A 1D LUT: one curve a channel. */
export interface CurveTable {
  readonly kind: '1d';
  /** Entries, 2..65536. */
  readonly size: number;
  readonly domainMin: Triple;
  readonly domainMax: Triple;
  /** `size` rows of r g b. */
  readonly values: Float64Array;
}

export type Lut = Lattice | CurveTable;

export const zeros: Triple = [0, 0, 0];
export const ones: Triple = [1, 1, 1];

/** Rows that a LUT of this kind and size has. */
export const rowCount = (kind: Lut['kind'], size: number): number => (kind === '3d' ? size ** 3 : size);

/** Code value of node `index` of 0..size-1, exact at both ends. */
export function nodeCode(index: number, size: number, min: number, max: number): number {
  const share = index / (size - 1);
  return min * (1 - share) + max * share;
}

/**
 * Where a code value falls among the nodes: 0 at the first, `last` at the last, never outside.
 * What is not a number counts as the first node.
 */
export function nodePosition(code: number, min: number, max: number, last: number): number {
  if (!(code > min)) return 0;
  return code < max ? ((code - min) / (max - min)) * last : last;
}

/** Nodes handed to a transform at once: enough to spread the cost of a call, few enough to stay in cache. */
const nodesPerChunk = 4096;

/**
 * Writes a transform down on a lattice.
 * @param transform takes code values r g b in place, in runs of whole rows of the lattice
 * @param size nodes a side, 2..256
 * @param domainMin code value of the first node, per channel
 * @param domainMax code value of the last node, per channel
 * @throws InputError for a size that no LUT has, RangeError for an empty domain
 */
export function sampleLattice(transform: Run, size: number, domainMin = zeros, domainMax = ones): Lattice {
  const steps = latticeSteps(transform, size, domainMin, domainMax);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** As {@link sampleLattice}, in steps between which something else may be done. */
export function* latticeSteps(
  transform: Run,
  size: number,
  domainMin = zeros,
  domainMax = ones,
): Generator<undefined, Lattice> {
  requireLatticeSize(size);
  requireDomain(domainMin, domainMax);
  const values = new Float64Array(3 * size ** 3);
  const lines = size * size;
  const step = Math.max(1, Math.floor(nodesPerChunk / size));
  for (let line = 0; line < lines; line += step) {
    const end = Math.min(line + step, lines);
    const chunk = values.subarray(3 * line * size, 3 * end * size);
    fillNodes(chunk, line, end, size, domainMin, domainMax);
    transform(chunk, (end - line) * size);
    yield;
  }
  return { kind: '3d', size, domainMin, domainMax, values };
}

/** The code values of the nodes of lines `from` up to `to`; a line is the nodes that differ in red only. */
function fillNodes(
  out: Float64Array,
  from: number,
  to: number,
  size: number,
  min: Triple,
  max: Triple,
): void {
  let at = 0;
  for (let line = from; line < to; line++) {
    const green = nodeCode(line % size, size, min[1], max[1]);
    const blue = nodeCode(Math.floor(line / size), size, min[2], max[2]);
    for (let r = 0; r < size; r++) {
      out[at++] = nodeCode(r, size, min[0], max[0]);
      out[at++] = green;
      out[at++] = blue;
    }
  }
}

function requireLatticeSize(size: number): void {
  const { least, most } = limits.latticeSize;
  if (Number.isInteger(size) && size >= least && size <= most) return;
  throw new InputError({
    field: 'size',
    what: `a 3D LUT cannot have ${size} nodes a side`,
    allowed: `whole numbers from ${least} to ${most}`,
  });
}

function requireDomain(min: Triple, max: Triple): void {
  if (isDomain(min, max)) return;
  throw new RangeError('the domain of a lattice must rise, and be finite, in every channel');
}

/** Whether a domain is finite and rises in every channel. */
export function isDomain(min: Triple, max: Triple): boolean {
  return min.every((low, channel) => low < max[channel] && Number.isFinite(max[channel] - low));
}

/** Whether a LUT takes code values from 0 to 1, as nearly all do. */
export function isUnitDomain({ domainMin, domainMax }: Lut): boolean {
  return domainMin.every((low) => low === 0) && domainMax.every((high) => high === 1);
}

import type { Run, Triple } from '../../../maths/matrix3.js';
import type { Lut } from '../../lattice.js';
import { ones, sampleLattice, zeros } from '../../lattice.js';
import type { Step } from './node.js';

/** One LUT, and what has to be said of it. */
export interface OneLut {
  readonly lut: Lut;
  readonly notes: readonly string[];
}

/** Sizes on which several nodes are taken together, unless one of them is larger. */
const takenTogether = { lattice: 33, curve: 4096 };

/** Twelve digits: what dividing by factors with a double's rounding leaves of a domain. */
const rounded = (value: number): number => Number(value.toPrecision(12)) + 0;

/** The code values that an affine step brings to 0 and 1: the domain of the table behind it. */
function domainOf({ scale, offset }: NonNullable<Step['affine']>): readonly [Triple, Triple] | undefined {
  if (!scale.every((factor) => factor > 0)) return undefined;
  const ends = [0, 1].map((end) => scale.map((factor, c) => rounded((end - offset[c]) / factor)));
  return ends.flat().every(Number.isFinite) ? (ends as unknown as readonly [Triple, Triple]) : undefined;
}

const chained =
  (steps: readonly Step[]): Run =>
  (values, count) =>
    steps.forEach(({ run }) => run(values, count));

function curveOf(run: Run, size: number): Lut {
  const values = Float64Array.from({ length: 3 * size }, (_, i) => Math.floor(i / 3) / (size - 1));
  run(values, size);
  return { kind: '1d', size, domainMin: zeros, domainMax: ones, values };
}

const notesOf = ({ note }: Step): string[] => (note === undefined ? [] : [note]);

/**
 * Process nodes as one LUT: a table as it is, with a scale before it as its domain; anything else taken together over
 * code values 0..1, on curves where every channel goes by itself, on a lattice otherwise.
 */
export function oneLut(steps: readonly Step[]): OneLut {
  const [first, second] = steps;
  if (steps.length === 1 && first.lut) return { lut: first.lut, notes: notesOf(first) };
  const domain = steps.length === 2 && first.affine && second.lut ? domainOf(first.affine) : undefined;
  if (domain)
    return { lut: { ...second.lut!, domainMin: domain[0], domainMax: domain[1] }, notes: notesOf(second) };
  const separable = steps.every((step) => step.separable);
  const largest = (kind: Lut['kind'], least: number) =>
    Math.max(least, ...steps.map(({ lut }) => (lut?.kind === kind ? lut.size : 0)));
  const size = separable ? largest('1d', takenTogether.curve) : largest('3d', takenTogether.lattice);
  const lut = separable ? curveOf(chained(steps), size) : sampleLattice(chained(steps), size);
  const on = separable ? `${size} entries` : `${size} points a side`;
  return {
    lut,
    notes: [`Its ${steps.length} process nodes are taken together on ${on}, over code values 0 to 1.`],
  };
}

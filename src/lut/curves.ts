import { InputError } from '../errors/input-error.js';
import type { Run, Triple } from '../maths/matrix3.js';
import { limits } from './formats/limits.js';
import { type CurveTable, nodeCode, ones, sampleLattice, zeros } from './lattice.js';

/** What becomes of `size` greys from 0 to 1: rows of r g b. */
function greysThrough(transform: Run, size: number): Float64Array {
  const values = Float64Array.from({ length: 3 * size }, (_, i) => nodeCode(Math.floor(i / 3), size, 0, 1));
  transform(values, size);
  return values;
}

/**
 * Writes the greys of a transform down as one curve a channel. That is the whole transform only when every channel
 * goes by itself: see {@link channelCrossing}.
 * @param transform takes code values r g b in place
 * @param size entries, 2..65536
 * @throws InputError for a size that no 1D LUT has
 */
export function sampleCurves(transform: Run, size: number): CurveTable {
  const { least, most } = limits.curveSize;
  if (!(Number.isInteger(size) && size >= least && size <= most))
    throw new InputError({
      field: 'size',
      what: `a 1D LUT cannot have ${size} entries`,
      allowed: `whole numbers from ${least} to ${most}`,
    });
  return { kind: '1d', size, domainMin: zeros, domainMax: ones, values: greysThrough(transform, size) };
}

/** Where curves alone are farthest from a transform. */
export interface Crossing {
  /** Difference of one channel's output code, 0..1, ends clipped as a device does. */
  readonly largest: number;
  /** Input code values of that colour. */
  readonly at: Triple;
  readonly channel: 0 | 1 | 2;
}

/** Steps of the cube's edge on which channels are compared: every cell of the usual lattice has its corners here. */
const probes = 33;

const clipped = (code: number): number => Math.min(1, Math.max(0, code));

/** How much an output channel depends on other channels' input: what curves, taken from the greys, get wrong. */
export function channelCrossing(transform: Run): Crossing {
  const greys = greysThrough(transform, probes);
  const { values } = sampleLattice(transform, probes);
  let worst: Crossing = { largest: 0, at: zeros, channel: 0 };
  for (let i = 0; i < values.length; i++) {
    const channel = (i % 3) as Crossing['channel'];
    const row = Math.floor(i / 3);
    const nodes = [row % probes, Math.floor(row / probes) % probes, Math.floor(row / probes ** 2)];
    const largest = Math.abs(clipped(values[i]) - clipped(greys[3 * nodes[channel] + channel]));
    if (largest > worst.largest || Number.isNaN(largest))
      worst = { largest, at: nodes.map((node) => node / (probes - 1)) as unknown as Triple, channel };
  }
  return worst;
}

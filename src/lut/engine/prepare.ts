import type { Samples } from '../apply-codes.js';
import { limits } from '../formats/limits.js';
import { isUnitDomain, type Lattice, type Lut } from '../lattice.js';
import { growTo, type RunKind, type SimdModule } from './simd-module.js';

/** Values up to this many times white, either way, fit the 16 bits of `fixed8`. */
const fixedReach = 1.99;

/** Up to here a sum of floats is exact to a fraction of a 16-bit code. */
const codeReach = 4;

/** Far from where floats end. */
const floatReach = 1e30;

/** The value of a table that lies furthest from 0, either way; NaN when one is not a number. */
function reachOf(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]));
  return most;
}

/**
 * The run that puts these codes through this LUT, or undefined for what the module does not do: 1D LUTs, sizes beyond
 * what common readers take, a change of depth, values far beyond white.
 */
export function runKindOf(lut: Lut, source: Samples, target: Samples): RunKind | undefined {
  if (lut.kind === '1d' || lut.size > limits.commonLatticeSize) return undefined;
  const reach = reachOf(lut.values);
  if (source instanceof Float32Array) return reach <= floatReach ? 'anyFloat' : undefined;
  if (source.BYTES_PER_ELEMENT !== target.BYTES_PER_ELEMENT || !(reach <= codeReach)) return undefined;
  const unit = isUnitDomain(lut);
  if (source.BYTES_PER_ELEMENT === 2) return unit ? 'whole16' : 'any16';
  return unit && reach <= fixedReach ? 'fixed8' : 'any8';
}

/** For each kind, the highest code and what the corners' weights add up to. */
const scales: Readonly<Record<RunKind, { highest: number; sum: number }>> = {
  fixed8: { highest: 255, sum: 255 },
  whole16: { highest: 65535, sum: 65535 },
  any8: { highest: 255, sum: 1 },
  any16: { highest: 65535, sum: 1 },
  anyFloat: { highest: 1, sum: 1 },
};

/** Bytes of nodes, and of what a cell beyond the last one could reach. */
function nodeBytes(kind: RunKind, size: number): number {
  return kind === 'fixed8' ? 48 * (size ** 3 + size ** 2) : 16 * (size ** 3 + size ** 2 + size + 1);
}

/**
 * Lays a lattice out in the module's memory as a kind of run wants it.
 * @returns the address from which memory is free
 */
export function prepareLattice(module: SimdModule, lattice: Lattice, kind: RunKind): number {
  const { size, values, domainMin, domainMax } = lattice;
  const free = module.nodesAt.value + nodeBytes(kind, size);
  growTo(module, free + values.byteLength);
  new Float64Array(module.memory.buffer, free, values.length).set(values);
  const { highest, sum } = scales[kind];
  if (kind === 'fixed8') module.prepareFixed(free, size);
  else {
    module.prepareSingle(free, size, highest / sum, sum);
    for (let channel = 0; channel < 3; channel++) {
      const width = domainMax[channel] - domainMin[channel];
      module.setDomain(channel, highest * domainMin[channel], (size - 1) / (highest * width));
    }
  }
  return free;
}

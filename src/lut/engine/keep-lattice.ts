import type { Samples } from '../apply-codes.js';
import type { Lut } from '../lattice.js';
import { prepareLattice, runKindOf } from './prepare.js';
import { areaBytes, type PreparedRun } from './run-area.js';
import { growTo, type SimdModule } from './simd-module.js';

/** What was prepared, and what for. */
interface Kept {
  readonly lut: Lut;
  readonly bytes: number;
  readonly run: PreparedRun | undefined;
}

function prepare(module: SimdModule, threads: number, lut: Lut, source: Samples, target: Samples) {
  const kind = runKindOf(lut, source, target);
  if (kind === undefined || lut.kind === '1d') return undefined;
  const area = prepareLattice(module, lut, kind);
  growTo(module, area + threads * areaBytes(module));
  return { kind, area };
}

/**
 * Keeps the last LUT prepared in a module's memory, since one picture after another goes through it.
 * @returns a function that tells how a picture is run, undefined where the module cannot do it
 */
export function latticeKeeper(module: SimdModule, threads: number) {
  let kept: Kept | undefined;
  return (lut: Lut, source: Samples, target: Samples): PreparedRun | undefined => {
    const bytes = source.BYTES_PER_ELEMENT;
    if (bytes !== target.BYTES_PER_ELEMENT) return undefined;
    if (kept?.lut !== lut || kept.bytes !== bytes)
      kept = { lut, bytes, run: prepare(module, threads, lut, source, target) };
    return kept.run;
  };
}

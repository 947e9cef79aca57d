import { requireFit } from '../apply-codes.js';
import type { Lut } from '../lattice.js';
import { type ApplyEngine, plainEngine } from './engine.js';
import { prepareLattice, runKindOf } from './prepare.js';
import { areaBytes, runArea } from './run-area.js';
import { growTo, type RunKind, type SimdModule } from './simd-module.js';

interface Prepared {
  readonly lut: Lut;
  readonly bytes: number;
  readonly kind: RunKind | undefined;
  readonly area: number;
}

/**
 * The engine over an instance of the compiled module, one thread. What the module does not do goes the plain way.
 * @param module an instance of its own: the engine keeps the last LUT in its memory
 */
export function simdEngine(module: SimdModule): ApplyEngine {
  let last: Prepared | undefined;
  return {
    title: 'SIMD',
    apply(lut, source, target, channels) {
      requireFit(source, target, channels);
      const sameDepth = source.BYTES_PER_ELEMENT === target.BYTES_PER_ELEMENT;
      if (!sameDepth) return plainEngine.apply(lut, source, target, channels);
      if (last?.lut !== lut || last.bytes !== source.BYTES_PER_ELEMENT) {
        const kind = runKindOf(lut, source, target);
        const area = kind && lut.kind === '3d' ? prepareLattice(module, lut, kind) : 0;
        growTo(module, area + areaBytes(module));
        last = { lut, bytes: source.BYTES_PER_ELEMENT, kind, area };
      }
      if (last.kind === undefined) plainEngine.apply(lut, source, target, channels);
      else runArea(module, last.kind, last.area, source, target, channels);
    },
  };
}

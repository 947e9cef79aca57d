import { requireFit } from '../apply-codes.js';
import { type ApplyEngine, plainEngine } from './engine.js';
import { latticeKeeper } from './keep-lattice.js';
import { runArea } from './run-area.js';
import type { SimdModule } from './simd-module.js';

/**
 * The engine over an instance of the compiled module, one thread. What the module does not do goes the plain way.
 * @param module an instance with a memory of its own
 */
export function simdEngine(module: SimdModule): ApplyEngine {
  const runFor = latticeKeeper(module, 1);
  return {
    title: 'SIMD',
    apply(lut, source, target, channels) {
      requireFit(source, target, channels);
      const run = runFor(lut, source, target);
      if (run === undefined) plainEngine.apply(lut, source, target, channels);
      else runArea(module, run, source, target, channels);
    },
  };
}

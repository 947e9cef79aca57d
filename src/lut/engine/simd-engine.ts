import { instantiate, ownMemory } from '../../maths/web-assembly.js';
import { requireFit } from '../apply-codes.js';
import { type ApplyEngine, plainEngine } from './engine.js';
import { latticeKeeper } from './keep-lattice.js';
import { runArea } from './run-area.js';
import type { SimdModule } from './simd-module.js';

/**
 * The engine over the compiled loops, one thread. What they do not do goes the plain way.
 * @param compiled a WebAssembly.Module of dist/apply-engine.wasm: Node compiles the file's bytes, a page what it fetched
 * @throws where the platform cannot run it
 */
export function simdEngine(compiled: object): ApplyEngine {
  const module = instantiate<SimdModule>(compiled, ownMemory());
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

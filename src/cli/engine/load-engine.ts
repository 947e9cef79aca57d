import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ApplyEngine, plainEngine } from '../../lut/engine/engine.js';
import { simdEngine } from '../../lut/engine/simd-engine.js';
import type { SimdModule } from '../../lut/engine/simd-module.js';
import { packageFolder } from '../maker.js';
import { Instance, Memory, Module } from './web-assembly.js';

/** What the build compiles for one thread, from src/lut/engine/assembly. */
const compiled = join(packageFolder, 'dist', 'apply-engine.wasm');

/**
 * The fastest engine that this machine runs, for one thread: the compiled one, or the plain one where WebAssembly has no
 * SIMD or may not be used.
 */
export function loadEngine(): ApplyEngine {
  const bytes = readFileSync(compiled);
  try {
    const memory = new Memory({ initial: 1 });
    return simdEngine(new Instance(new Module(bytes), { env: { memory } }).exports as SimdModule);
  } catch {
    return plainEngine;
  }
}

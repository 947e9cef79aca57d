import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ApplyEngine, plainEngine } from '../../lut/engine/engine.js';
import { simdEngine } from '../../lut/engine/simd-engine.js';
import type { SimdModule } from '../../lut/engine/simd-module.js';
import { packageFolder } from '../maker.js';
import { Instance, Memory, Module, type WasmMemory } from './web-assembly.js';

/** What the build compiles from src/lut/engine/assembly: for memory of one's own, and for memory that threads share. */
const compiled = { own: 'apply-engine.wasm', shared: 'apply-engine-shared.wasm' } as const;

const compile = (file: string): object => new Module(readFileSync(join(packageFolder, 'dist', file)));

/** The most pages that the shared memory may grow to, as it was compiled: 4 GB, taken only as they are used. */
const mostPages = 65536;

export const instantiate = (module: object, memory: WasmMemory): SimdModule =>
  new Instance(module, { env: { memory } }).exports as SimdModule;

/**
 * The fastest engine that this machine runs, for one thread: the compiled one, or the plain one where WebAssembly has no
 * SIMD or may not be used.
 */
export function loadEngine(): ApplyEngine {
  try {
    return simdEngine(instantiate(compile(compiled.own), new Memory({ initial: 1 })));
  } catch {
    return plainEngine;
  }
}

/** The compiled loops and a memory for several threads, or undefined where that cannot be had. */
export function loadShared(): { module: object; memory: WasmMemory } | undefined {
  try {
    const memory = new Memory({ initial: 1, maximum: mostPages, shared: true });
    return { module: compile(compiled.shared), memory };
  } catch {
    return undefined;
  }
}

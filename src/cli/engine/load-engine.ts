import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ApplyEngine, plainEngine } from '../../lut/engine/engine.js';
import { simdEngine } from '../../lut/engine/simd-engine.js';
import { compile, sharedMemory, type WasmMemory } from '../../maths/web-assembly.js';
import { packageFolder } from '../maker.js';

/**
 * What the build compiles from src/lut/engine/assembly, for memory of one's own and for memory that threads share, and
 * from src/picture/lines/assembly.
 */
const compiled = {
  own: 'apply-engine.wasm',
  shared: 'apply-engine-shared.wasm',
  lines: 'plane-lines.wasm',
} as const;

const compileFile = (file: string): object => compile(readFileSync(join(packageFolder, 'dist', file)));

/**
 * The fastest engine that this machine runs, for one thread: the compiled one, or the plain one where WebAssembly has no
 * SIMD or may not be used.
 */
export function loadEngine(): ApplyEngine {
  try {
    return simdEngine(compileFile(compiled.own));
  } catch {
    return plainEngine;
  }
}

/** The compiled loops and a memory for several threads, or undefined where that cannot be had. */
export function loadShared(): { module: object; memory: WasmMemory } | undefined {
  try {
    return { module: compileFile(compiled.shared), memory: sharedMemory() };
  } catch {
    return undefined;
  }
}

/** The compiled loops over lines of frames, for memory that threads share; undefined where they cannot be had. */
export function loadLines(): object | undefined {
  try {
    return compileFile(compiled.lines);
  } catch {
    return undefined;
  }
}

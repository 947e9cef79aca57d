import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dyeModel, type MakeDyeModel } from '../../film/dye-model.js';
import { simdDyeModels } from '../../film/engine/simd-dye-model.js';
import { compile } from '../../maths/web-assembly.js';

/**
 * The film model over the loops that the build compiles from src/film/engine/assembly, or the plain one where WebAssembly
 * has no SIMD or may not be used.
 * @param packageFolder the package's own
 */
export function loadFilm(packageFolder: string): MakeDyeModel {
  try {
    return simdDyeModels(compile(readFileSync(join(packageFolder, 'dist/film-engine.wasm'))));
  } catch {
    return dyeModel;
  }
}

import { dyeModel, type MakeDyeModel } from '../../film/dye-model.js';
import { simdDyeModels } from '../../film/engine/simd-dye-model.js';
import { compile } from '../../maths/web-assembly.js';

function load(): MakeDyeModel {
  try {
    return simdDyeModels(compile(Uint8Array.from(atob(__FILM_ENGINE__), (letter) => letter.charCodeAt(0))));
  } catch {
    return dyeModel;
  }
}

/** The film model over the compiled loops, or the plain one where the browser does not run them. */
export const makeDyeModel = load();

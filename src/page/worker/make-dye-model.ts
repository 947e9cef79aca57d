import { dyeModel, type MakeDyeModel } from '../../film/dye-model.js';
import { simdDyeModels } from '../../film/engine/simd-dye-model.js';
import { compiled } from './compiled.js';

function load(): MakeDyeModel {
  try {
    return simdDyeModels(compiled(__FILM_ENGINE__));
  } catch {
    return dyeModel;
  }
}

/** The film model over the compiled loops, or the plain one where the browser does not run them. */
export const makeDyeModel = load();

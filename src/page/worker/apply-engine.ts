import { type ApplyEngine, plainEngine } from '../../lut/engine/engine.js';
import { simdEngine } from '../../lut/engine/simd-engine.js';
import { compiled } from './compiled.js';

function load(): ApplyEngine {
  try {
    return simdEngine(compiled(__APPLY_ENGINE__));
  } catch {
    return plainEngine;
  }
}

/** What pictures go through tables by: the compiled loops, or the plain way where the browser does not run them. */
export const applyEngine = load();

// Measures a reel: stills of faded film -> what time did to its dyes. Knows film, looks and pictures in memory;
// knows no files, no jobs and no words of the command line.

import { densityLight } from '../film/density-light.js';
import { densityOf } from '../film/density.js';
import { dyeAmountSolver } from '../film/dye-amounts.js';
import { dyeModel } from '../film/dye-model.js';
import type { DyeSet } from '../film/dye-sets/index.js';
import { gateLight } from '../film/stock.js';
import type { Triple } from '../maths/matrix3.js';

/**
 * Dye amounts in units of equivalent neutral density: 1 1 1 is the mixture that looks neutral at density 1 under the
 * gate light. In these units a neutral has about equal amounts at every density, and fading and stain are a factor
 * and an offset of each dye by itself: observed = (1 - loss) original + stain.
 */
export interface DyeSpace {
  /** Densities of red, green, blue relative to the open gate -> equivalent amounts, in place. */
  toAmounts(densities: Float64Array): void;
  /** Equivalent amounts -> light of the density primaries, open gate 1 1 1, in place. */
  toLight(amounts: Float64Array): void;
  /** The densities that a small equivalent amount of each dye adds to clear film: what a stain of it looks like. */
  stainDensities(amounts: Triple): Triple;
}

export function dyeSpace(dyes: DyeSet): DyeSpace {
  const model = dyeModel(dyes, dyes.base, densityLight(gateLight).light);
  const solve = dyeAmountSolver(model);
  const unit = new Float64Array(3);
  solve(Float64Array.of(1, 1, 1), unit);
  const densitiesAt = (amounts: Triple): Triple => {
    const light = new Float64Array(3);
    model.light(amounts[0] * unit[0], amounts[1] * unit[1], amounts[2] * unit[2], light);
    return [densityOf(light[0]), densityOf(light[1]), densityOf(light[2])];
  };
  const clear = densitiesAt([0, 0, 0]);
  return {
    toAmounts(densities) {
      const amounts = new Float64Array(3);
      for (let i = 0; i < densities.length; i += 3) {
        solve(densities.subarray(i, i + 3), amounts);
        for (let k = 0; k < 3; k++) densities[i + k] = amounts[k] / unit[k];
      }
    },
    toLight(amounts) {
      const light = new Float64Array(3);
      for (let i = 0; i < amounts.length; i += 3) {
        model.light(amounts[i] * unit[0], amounts[i + 1] * unit[1], amounts[i + 2] * unit[2], light);
        amounts.set(light, i);
      }
    },
    stainDensities(amounts) {
      const stained = densitiesAt(amounts);
      return [stained[0] - clear[0], stained[1] - clear[1], stained[2] - clear[2]];
    },
  };
}

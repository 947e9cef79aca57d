import { primaries } from '../../colour/primaries/index.js';
import { rgbToRgb } from '../../colour/primaries/rgb-matrix.js';
import { srgb } from '../../colour/transfer-functions/srgb.js';
import { dyeAmountSolver } from '../../film/dye-amounts.js';
import { type DyeModel, dyeModel } from '../../film/dye-model.js';
import { dyeSets } from '../../film/dye-sets/index.js';
import { ageStock, gateLight } from '../../film/stock.js';
import { sampleLut } from '../../lut/interpolate.js';
import { sampleLattice } from '../../lut/lattice.js';
import { type Run, transformRun3, type Triple } from '../../maths/matrix3.js';
import type { DemoAge } from './ages.js';
import { type Characteristic, densityAt } from './characteristic.js';

/** log10 exposures between which the film is tabulated: below and above, nothing more happens to it. */
export const leastLogExposure = -2.7;
export const mostLogExposure = 0.7;

/**
 * A reversal film of our own: rather hard, as films made to be projected are. Its blackest grey is one that the dye model
 * makes without passing the amounts it takes film at its word for (cyan 3.2).
 */
export const characteristic: Characteristic = {
  least: 0.11,
  most: 2.6,
  contrast: 1.4,
  whiteAt: -0.2,
  highlightRounding: 0.13,
  shadeRounding: 0.16,
};

/**
 * Share by which a layer's log exposure is driven away from the mean of the three: a developing layer holds its
 * neighbours back, which makes up for the dyes' unwanted absorptions. Greys are untouched.
 */
const interimage = 0.14;

/** The dye sets of camera film. */
export type ReversalStock = 'reversal-early' | 'reversal-late';

const steps = 320;
const deepest = 2.6;

/** Amounts of cyan, magenta and yellow that make each density neutral under the gate light: `3 * (steps + 1)` numbers. */
function neutralAmounts(model: DyeModel): Float64Array {
  const solve = dyeAmountSolver(model);
  const table = new Float64Array(3 * (steps + 1));
  for (let i = 0; i <= steps; i++)
    solve(new Float64Array(3).fill((deepest * i) / steps), table.subarray(3 * i, 3 * i + 3));
  return table;
}

/** Log exposures of the three layers -> linear BT.2020 of the film in the gate, open gate 1 1 1. In place. */
function develop(dyes: ReversalStock): Run {
  const model = dyeModel(dyeSets[dyes], dyeSets[dyes].base, gateLight);
  const neutral = neutralAmounts(model);
  const light = new Float64Array(3);
  const amount = (logExposure: number, layer: number) => {
    const at = (densityAt(characteristic, logExposure) / deepest) * steps;
    const i = Math.min(steps - 1, Math.floor(at));
    const low = neutral[3 * i + layer];
    return low + (at - i) * (neutral[3 * i + 3 + layer] - low);
  };
  return (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const mean = (values[i] + values[i + 1] + values[i + 2]) / 3;
      const drive = (k: number) => amount(values[i + k] + interimage * (values[i + k] - mean), k);
      model.light(drive(0), drive(1), drive(2), light);
      values.set(light, i);
    }
  };
}

/** What the camera writes of linear BT.2020: BT.709 primaries, sRGB code values, the open gate at 1. In place. */
function cameraCodes(): Run {
  const toCamera = rgbToRgb(primaries.bt2020, primaries.bt709);
  return (values, count) => {
    transformRun3(toCamera, values, count);
    for (let i = 0; i < 3 * count; i++) values[i] = srgb.encode(values[i]);
  };
}

const lowest: Triple = [leastLogExposure, leastLogExposure, leastLogExposure];
const highest: Triple = [mostLogExposure, mostLogExposure, mostLogExposure];
/** Nodes a side: a step of 0.1 in log exposure, over which the curve bends by less than 0.005 of density. */
const nodes = 35;

/**
 * From exposure to the camera's picture: three characteristic curves, dyes that make every grey neutral, what time
 * did, and the camera before the gate light.
 * @returns a run from log10 exposures to sRGB code values; these may pass 0 and 1 where film passes BT.709
 */
export function filmAndCamera(dyes: ReversalStock, { loss, stain }: Omit<DemoAge, 'title'>): Run {
  const isNew = [...Object.values(loss), ...Object.values(stain)].every((value) => value === 0);
  const ageing = isNew ? [] : [ageStock({ dyes: dyeSets[dyes], loss, stain })];
  const sections = [develop(dyes), ...ageing, cameraCodes()];
  const whole: Run = (values, count) => sections.forEach((section) => section(values, count));
  return sampleLut(sampleLattice(whole, nodes, lowest, highest));
}

import { illuminants } from '../colour/illuminants/index.js';
import { type Run, transform3, transformRun3 } from '../maths/matrix3.js';
import { type DensityLight, densityLight } from './density-light.js';
import { aboveFloor, densityOf, transmittanceOf } from './density.js';
import { dyeAmountSolver } from './dye-amounts.js';
import { type DyeModel, dyeModel, type MakeDyeModel } from './dye-model.js';
import type { DyeSet } from './dye-sets/dye-set.js';
import { type DyeLoss, faded, unfaded } from './fading.js';
import { type FilmLight, filmLight } from './film-light.js';
import { type Stain, stainSpectrum } from './stain.js';

/** What time did to a stock. */
export interface StockAge {
  readonly dyes: DyeSet;
  readonly loss: DyeLoss;
  readonly stain: Stain;
}

/** The gate light as the camera's white balance sees it: neutral, taken as D65. */
export const gateLight: FilmLight = filmLight(illuminants.d65.spectrum);

/** A film behind a light: its dyes on their base and stain, and the light in which its densities are taken. */
interface FilmState extends DensityLight {
  readonly model: DyeModel;
}

function filmState(dyes: DyeSet, stain: Stain, light: FilmLight, make: MakeDyeModel): FilmState {
  const added = stainSpectrum(stain);
  const base = dyes.base.map((value, i) => value + added[i]);
  const inDensities = densityLight(light);
  return { ...inDensities, model: make(dyes, base, inDensities.light) };
}

/**
 * Brings a run of colours from one state of a film to another: finds the dyes, changes them, and applies the CHANGE
 * in density that the spectral model predicts to what was seen. So no change is exactly none, and a colour that no
 * dyes can make stays near its neighbours.
 */
function changeOfState(before: FilmState, after: FilmState, change?: (amounts: Float64Array) => void): Run {
  const solve = dyeAmountSolver(before.model);
  const seen = new Float64Array(3);
  const densities = new Float64Array(3);
  const amounts = new Float64Array(3);
  const light = new Float64Array(3);
  return (values, count) => {
    transformRun3(before.fromBt2020, values, count);
    for (let i = 0; i < 3 * count; i += 3) {
      for (let k = 0; k < 3; k++) densities[k] = seen[k] = densityOf(values[i + k]);
      solve(densities, amounts);
      change?.(amounts);
      after.model.light(amounts[0], amounts[1], amounts[2], light);
      for (let k = 0; k < 3; k++) {
        // Within film the densities found are those seen, and their light is at hand.
        const found = densities[k] === seen[k] ? aboveFloor(values[i + k]) : transmittanceOf(densities[k]);
        values[i + k] *= aboveFloor(light[k]) / found;
      }
    }
    transformRun3(after.toBt2020, values, count);
  };
}

const noStain: Stain = { red: 0, green: 0, blue: 0 };

/**
 * Gives back the dyes that were lost and takes the stain out. Linear BT.2020 relative to the open gate, in place.
 * @param make how the spectral model is reckoned
 */
export function restoreStock({ dyes, loss, stain }: StockAge, make = dyeModel): Run {
  const [aged, sound] = [stain, noStain].map((added) => filmState(dyes, added, gateLight, make));
  return changeOfState(aged, sound, (amounts) => {
    amounts[0] = unfaded(amounts[0], loss.cyan);
    amounts[1] = unfaded(amounts[1], loss.magenta);
    amounts[2] = unfaded(amounts[2], loss.yellow);
  });
}

/** Ages film: the opposite of {@link restoreStock}, for demonstrations and tests. */
export function ageStock({ dyes, loss, stain }: StockAge): Run {
  const [sound, aged] = [noStain, stain].map((added) => filmState(dyes, added, gateLight, dyeModel));
  return changeOfState(sound, aged, (amounts) => {
    amounts[0] = faded(amounts[0], loss.cyan);
    amounts[1] = faded(amounts[1], loss.magenta);
    amounts[2] = faded(amounts[2], loss.yellow);
  });
}

/**
 * Puts another lamp behind the film: what its dyes, seen under the gate light, look like under the lamp, balanced so
 * that the lamp's open gate is again 1 1 1. Linear BT.2020 relative to the open gate, in place.
 */
export function relight(dyes: DyeSet, lamp: FilmLight, make = dyeModel): Run {
  const [before, after] = [gateLight, lamp].map((light) => filmState(dyes, noStain, light, make));
  return changeOfState(before, after);
}

/** Amounts of dye that a frame of film holds: clear to densest, 1 = peak density 1. */
const filmAmounts = { least: 0, most: 3 } as const;

/**
 * Tells which colours an aged stock can show at all.
 * @returns a function from linear BT.2020 relative to the open gate
 */
export function filmGamut({
  dyes,
  loss,
  stain,
}: StockAge): (red: number, green: number, blue: number) => boolean {
  const { model, fromBt2020 } = filmState(dyes, stain, gateLight, dyeModel);
  const solve = dyeAmountSolver(model);
  const densities = new Float64Array(3);
  const amounts = new Float64Array(3);
  const left = [1 - loss.cyan, 1 - loss.magenta, 1 - loss.yellow];
  return (red, green, blue) => {
    densities.set(transform3(fromBt2020, [red, green, blue]).map(densityOf));
    solve(densities, amounts);
    return left.every(
      (share, k) => amounts[k] >= filmAmounts.least && amounts[k] <= share * filmAmounts.most,
    );
  };
}

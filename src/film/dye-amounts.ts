import { invert3, type Matrix3 } from '../maths/matrix3.js';
import { aboveFloor, aboveFloorSlope, densityOf } from './density.js';
import type { DyeModel } from './dye-model.js';

/**
 * Amounts between which film is taken at its word; beyond, they bend towards the outer limits and never pass them, and
 * densities go on along straight lines, so that every colour has an answer.
 */
const inner = [-0.1, 3.2] as const;
const outer = [-0.5, 4.5] as const;

/**
 * Newton ends with the step taken at this density error: the error falls as its square, so what remains is far below
 * what a lattice of six decimals can tell.
 */
const lastStepAt = 1e-5;
const mostSteps = 30;
/** A colour this near the one before (density) starts from it instead of from the straight line. */
const near = 0.25;
/** The furthest an amount moves in one step: a colour no dyes can make must not throw the search away. */
const longestStep = 0.8;

/** How far a limit is passed and over what distance the outer one is neared; undefined between the limits. */
const beyond = (x: number): readonly [excess: number, reach: number] | undefined =>
  x > inner[1]
    ? [x - inner[1], outer[1] - inner[1]]
    : x < inner[0]
      ? [x - inner[0], outer[0] - inner[0]]
      : undefined;

/** Densities of red, green, blue behind given amounts of dye, and their slopes by amount. */
export interface DensityPoint {
  readonly densities: Float64Array;
  /** Row by row: dDr/dc dDr/dm dDr/dy dDg/dc ... */
  readonly slopes: Float64Array;
}

/** Fills `point` with densities and slopes at the amounts. */
export function densityPoint(
  model: DyeModel,
  amounts: ArrayLike<number>,
  scratch: Float64Array,
  point: DensityPoint,
): void {
  model.lightAndSlopes(amounts[0], amounts[1], amounts[2], scratch);
  for (let k = 0; k < 3; k++) {
    point.densities[k] = densityOf(scratch[k]);
    const slope = -aboveFloorSlope(scratch[k]) / (aboveFloor(scratch[k]) * Math.LN10);
    for (let j = 0; j < 3; j++) point.slopes[3 * k + j] = slope * scratch[3 + 3 * k + j];
  }
}

/** The straight line through a mid density: where Newton starts. */
interface LinearStart {
  readonly amount: number;
  readonly densities: Float64Array;
  readonly slopes: Matrix3;
  readonly inverse: Matrix3;
}

function linearStart(model: DyeModel, amount: number): LinearStart {
  const point = { densities: new Float64Array(3), slopes: new Float64Array(9) };
  densityPoint(model, [amount, amount, amount], new Float64Array(12), point);
  const slopes = [...point.slopes] as unknown as Matrix3;
  return { amount, densities: point.densities, slopes, inverse: invert3(slopes) };
}

/**
 * Finds the amounts of dye behind the densities that a camera saw. A linear solve brings the colour within what film
 * can be (a colour that no dyes make is brought in smoothly, so its neighbours stay its neighbours); Newton steps on
 * the spectral integrals do the rest, from the colour before where it is near.
 * @returns a function from three densities to three amounts; `densities` becomes those of the amounts found (the same
 *   for a colour within film, to 1e-9); it returns the number of Newton steps it took
 */
export function dyeAmountSolver(model: DyeModel): (densities: Float64Array, amounts: Float64Array) => number {
  const start = linearStart(model, 0.7);
  const scratch = new Float64Array(12);
  const point = { densities: new Float64Array(3), slopes: new Float64Array(9) };
  const bend = new Float64Array(3);
  const target = new Float64Array(3);
  const move = new Float64Array(3);
  const last = { target: new Float64Array(3).fill(Infinity), amounts: new Float64Array(3) };
  const { slopes: s, inverse: v } = start;

  /** The linear amounts, bent to within film; the densities to solve for, moved along, into `target`. */
  function aim(densities: Float64Array, amounts: Float64Array): void {
    const r = densities[0] - start.densities[0];
    const g = densities[1] - start.densities[1];
    const b = densities[2] - start.densities[2];
    for (let k = 0; k < 3; k++) {
      const plain = start.amount + v[3 * k] * r + v[3 * k + 1] * g + v[3 * k + 2] * b;
      amounts[k] = withinFilm(plain);
      bend[k] = amounts[k] - plain;
    }
    for (let k = 0; k < 3; k++)
      target[k] = densities[k] + s[3 * k] * bend[0] + s[3 * k + 1] * bend[1] + s[3 * k + 2] * bend[2];
  }

  /** Goes on from the colour before along its slopes, if that is near. */
  function startFromLast(amounts: Float64Array): void {
    point.densities.set(last.target);
    if (!(errorOf(point, target) < near)) return;
    newtonMove(point, target, move);
    for (let k = 0; k < 3; k++) amounts[k] = last.amounts[k] + move[k];
  }

  function search(amounts: Float64Array): number {
    let lastError = Infinity;
    for (let step = 1; step <= mostSteps; step++) {
      densityPoint(model, amounts, scratch, point);
      const error = errorOf(point, target);
      if (error > lastError) {
        for (let k = 0; k < 3; k++) amounts[k] -= move[k] *= 0.5;
        continue;
      }
      lastError = error;
      newtonMove(point, target, move);
      for (let k = 0; k < 3; k++) amounts[k] += move[k];
      if (error < lastStepAt) return step;
    }
    return mostSteps;
  }

  return (densities, amounts) => {
    aim(densities, amounts);
    startFromLast(amounts);
    const taken = search(amounts);
    last.target.set(target);
    last.amounts.set(amounts);
    densities.set(target);
    return taken;
  };
}

/** The largest of three density errors. */
function errorOf({ densities }: DensityPoint, target: Float64Array): number {
  const [r, g, b] = [target[0] - densities[0], target[1] - densities[1], target[2] - densities[2]];
  return Math.max(Math.abs(r), Math.abs(g), Math.abs(b));
}

/** The Newton step towards the target, cut to the longest allowed. */
function newtonMove({ densities, slopes: j }: DensityPoint, target: Float64Array, move: Float64Array): void {
  const x = target[0] - densities[0];
  const y = target[1] - densities[1];
  const z = target[2] - densities[2];
  const a = j[4] * j[8] - j[5] * j[7];
  const b = j[5] * j[6] - j[3] * j[8];
  const c = j[3] * j[7] - j[4] * j[6];
  const d = j[0] * a + j[1] * b + j[2] * c;
  move[0] = (a * x + (j[2] * j[7] - j[1] * j[8]) * y + (j[1] * j[5] - j[2] * j[4]) * z) / d;
  move[1] = (b * x + (j[0] * j[8] - j[2] * j[6]) * y + (j[2] * j[3] - j[0] * j[5]) * z) / d;
  move[2] = (c * x + (j[1] * j[6] - j[0] * j[7]) * y + (j[0] * j[4] - j[1] * j[3]) * z) / d;
  const shorten =
    longestStep / Math.max(longestStep, Math.abs(move[0]), Math.abs(move[1]), Math.abs(move[2]));
  for (let k = 0; k < 3; k++) move[k] *= shorten;
}

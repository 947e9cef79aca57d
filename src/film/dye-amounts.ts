import { invert3, type Matrix3, transformRun3 } from '../maths/matrix3.js';
import { aboveFloor, aboveFloorSlope, densityOf } from './density.js';
import type { DyeModel } from './dye-model.js';

/**
 * Amounts between which film is taken at its word. Beyond, they bend towards the outer limits and never pass them, and
 * densities go on along straight lines, so that a colour which no dyes can make has an answer near its neighbours'.
 */
const inner = [-0.1, 3.2] as const;
const outer = [-0.5, 4.5] as const;

/**
 * Newton ends with the step taken at this density error: the error falls as its square, so what remains is far below
 * what a lattice of six decimals can tell.
 */
const lastStepAt = 3e-6;
const mostSteps = 40;
/** A colour this near the one before (density) starts from it instead of from the straight line. */
const near = 0.25;
/** The furthest an amount moves in one step where film can be: the straight line may point far past it. */
const longestStep = 0.8;

/** Equal to x between the inner limits, bending smoothly (first slope kept) towards the outer ones. */
function withinFilm(x: number): number {
  const side = x > inner[1] ? 1 : 0;
  if (x <= inner[1] && x >= inner[0]) return x;
  const reach = outer[side] - inner[side];
  return outer[side] - reach * Math.exp((inner[side] - x) / reach);
}

/** The slope of {@link withinFilm}: 1 between the inner limits, falling to 0. */
function withinFilmSlope(x: number): number {
  if (x > inner[1]) return Math.exp((inner[1] - x) / (outer[1] - inner[1]));
  return x < inner[0] ? Math.exp((inner[0] - x) / (outer[0] - inner[0])) : 1;
}

/** Densities of red, green, blue behind given amounts of dye, and their slopes by amount. */
export interface DensityPoint {
  readonly densities: Float64Array;
  /** Row by row: dDr/dc dDr/dm dDr/dy dDg/dc ... */
  readonly slopes: Float64Array;
}

const newPoint = (): DensityPoint => ({ densities: new Float64Array(3), slopes: new Float64Array(9) });

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

/** The amount of each dye, a mid grey, whose slopes are the straight lines. */
const middle = 0.7;

/**
 * Finds the amounts of dye behind the densities that a camera saw: a linear solve about a mid grey as the start, Newton
 * steps on the spectral integrals for the rest, from the colour before where it is near. Every colour has one answer,
 * whatever came before it.
 * @returns a function from three densities to three amounts; `densities` becomes those of the amounts found (the same
 *   for a colour within film, to 1e-9); it returns the number of Newton steps it took
 */
export function dyeAmountSolver(model: DyeModel): (densities: Float64Array, amounts: Float64Array) => number {
  const scratch = new Float64Array(12);
  const grey = newPoint();
  densityPoint(model, [middle, middle, middle], scratch, grey);
  const line = grey.slopes;
  const toAmounts = invert3([...line] as unknown as Matrix3);

  const point = newPoint();
  const onFilm = new Float64Array(3);
  const move = new Float64Array(3);
  /** Amounts before they bend: those of the search, and where it ended the last time. */
  const reached = new Float64Array(3);
  const last = { densities: new Float64Array(3).fill(Infinity), reached: new Float64Array(3) };

  /** Film within the limits, straight lines beyond: densities and slopes at the amounts reached. */
  function extendedPoint(): void {
    for (let j = 0; j < 3; j++) onFilm[j] = withinFilm(reached[j]);
    densityPoint(model, onFilm, scratch, point);
    for (let j = 0; j < 3; j++) {
      const slope = withinFilmSlope(reached[j]);
      if (slope === 1) continue;
      for (let k = 0; k < 9; k += 3) {
        point.densities[k / 3] += line[k + j] * (reached[j] - onFilm[j]);
        point.slopes[k + j] = slope * point.slopes[k + j] + (1 - slope) * line[k + j];
      }
    }
  }

  function startFromLine(target: Float64Array): void {
    for (let k = 0; k < 3; k++) move[k] = target[k] - grey.densities[k];
    transformRun3(toAmounts, move, 1);
    for (let k = 0; k < 3; k++) reached[k] = middle + move[k];
  }

  function search(target: Float64Array): number {
    let lastError = Infinity;
    for (let step = 1; step <= mostSteps; step++) {
      extendedPoint();
      const error = errorOf(point, target);
      if (error > lastError) {
        for (let k = 0; k < 3; k++) reached[k] -= move[k] *= 0.5;
        continue;
      }
      lastError = error;
      newtonMove(point, target, move);
      for (let k = 0; k < 3; k++) reached[k] += move[k];
      if (error < lastStepAt) return step;
    }
    return mostSteps;
  }

  return (densities, amounts) => {
    startFromLine(densities);
    point.densities.set(last.densities);
    if (errorOf(point, densities) < near) reached.set(last.reached);
    const taken = search(densities);
    last.densities.set(densities);
    last.reached.set(reached);
    for (let j = 0; j < 3; j++) {
      amounts[j] = withinFilm(reached[j]);
      for (let k = 0; k < 3; k++) densities[k] -= line[3 * k + j] * (reached[j] - amounts[j]);
    }
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

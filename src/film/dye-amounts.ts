import { invert3, type Matrix3, transformRun3 } from '../maths/matrix3.js';
import { amountTrail } from './amount-trail.js';
import { densityPoint, furthest, newPoint, newtonMove } from './density-point.js';
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
const lastStepAt = 5e-6;
const mostSteps = 40;
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

/** The amount of each dye, a mid grey, whose slopes are the straight lines. */
const middle = 0.7;

/**
 * Finds the amounts of dye behind the densities that a camera saw: Newton steps on the spectral integrals, from where
 * the colours before it lead where they are near, else from a linear solve about a mid grey. Every colour has one answer,
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
  /** Amounts before they bend: those of the search. */
  const reached = new Float64Array(3);
  const trail = amountTrail();

  /** Film within the limits, straight lines beyond: densities and slopes at the amounts reached. */
  function extendedPoint(): void {
    for (let j = 0; j < 3; j++) onFilm[j] = withinFilm(reached[j]);
    densityPoint(model, onFilm, scratch, point);
    for (let j = 0; j < 3; j++) {
      const slope = withinFilmSlope(reached[j]);
      if (slope === 1) continue;
      for (let k = 0; k < 3; k++) {
        const at = 3 * k + j;
        point.densities[k] += line[at] * (reached[j] - onFilm[j]);
        point.slopes[at] = slope * point.slopes[at] + (1 - slope) * line[at];
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
      const error = furthest(point.densities, target);
      if (error > lastError) {
        for (let k = 0; k < 3; k++) reached[k] -= move[k] *= 0.5;
        continue;
      }
      lastError = error;
      newtonMove(point, target, move, longestStep);
      for (let k = 0; k < 3; k++) reached[k] += move[k];
      if (error < lastStepAt) return step;
    }
    return mostSteps;
  }

  return (densities, amounts) => {
    if (!trail.lead(densities, reached)) startFromLine(densities);
    const taken = search(densities);
    trail.add(densities, reached, point.slopes);
    for (let j = 0; j < 3; j++) {
      amounts[j] = withinFilm(reached[j]);
      if (amounts[j] === reached[j]) continue;
      for (let k = 0; k < 3; k++) densities[k] -= line[3 * k + j] * (reached[j] - amounts[j]);
    }
    return taken;
  };
}

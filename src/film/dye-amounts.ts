import { invert3, type Matrix3, transformRun3 } from '../maths/matrix3.js';
import { amountTrail } from './amount-trail.js';
import { densityPoint, furthest, newPoint, newtonMove, slopesAt } from './density-point.js';
import type { DyeModel } from './dye-model.js';

/**
 * Amounts between which film is taken at its word. Beyond, they bend towards the outer limits and never pass them, and
 * densities go on along straight lines, so that a colour which no dyes can make has an answer near its neighbours'.
 */
const innerLeast = -0.1;
const innerMost = 3.2;
const outerLeast = -0.5;
const outerMost = 4.5;

/**
 * Newton ends with the step taken at this density error: the error falls as its square, so what remains is far below
 * what a lattice of six decimals can tell.
 */
const lastStepAt = 5e-6;
const mostSteps = 40;
/** The furthest an amount moves in one step where film can be: the straight line may point far past it. */
const longestStep = 0.8;

/** How much of a step an amount still takes: all between the inner limits, falling to nothing beyond. */
function slopeWithinFilm(x: number): number {
  if (x > innerMost) return Math.exp((innerMost - x) / (outerMost - innerMost));
  return x < innerLeast ? Math.exp((innerLeast - x) / (outerLeast - innerLeast)) : 1;
}

/** Equal to x between the inner limits, bending smoothly (first slope kept) towards the outer ones. */
function withinFilm(x: number, slope: number): number {
  if (x > innerMost) return outerMost - (outerMost - innerMost) * slope;
  return x < innerLeast ? outerLeast - (outerLeast - innerLeast) * slope : x;
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
  const grey = newPoint();
  densityPoint(model, middle, middle, middle, grey);
  const line = grey.slice(slopesAt);
  const toAmounts = invert3([...line] as unknown as Matrix3);

  const point = newPoint();
  const move = new Float64Array(3);
  /** Amounts before they bend: those of the search. */
  const reached = new Float64Array(3);
  /** What they are on film, and how much of a step they still take there. */
  const onFilm = new Float64Array(3);
  const bent = new Float64Array(3);
  const trail = amountTrail();

  /** Film within the limits, straight lines beyond: densities and slopes at the amounts reached. */
  function extendedPoint(): void {
    for (let j = 0; j < 3; j++) {
      bent[j] = slopeWithinFilm(reached[j]);
      onFilm[j] = withinFilm(reached[j], bent[j]);
    }
    densityPoint(model, onFilm[0], onFilm[1], onFilm[2], point);
    for (let j = 0; j < 3; j++) {
      const slope = bent[j];
      if (slope === 1) continue;
      const beyond = reached[j] - onFilm[j];
      for (let k = 0; k < 3; k++) {
        const at = 3 * k + j;
        point[k] += line[at] * beyond;
        point[slopesAt + at] = slope * point[slopesAt + at] + (1 - slope) * line[at];
      }
    }
  }

  function startFromLine(target: Float64Array): void {
    for (let k = 0; k < 3; k++) move[k] = target[k] - grey[k];
    transformRun3(toAmounts, move, 1);
    for (let k = 0; k < 3; k++) reached[k] = middle + move[k];
  }

  function search(target: Float64Array): number {
    let lastError = Infinity;
    for (let step = 1; step <= mostSteps; step++) {
      extendedPoint();
      const error = furthest(point, target);
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
    trail.add(densities, reached, point);
    for (let j = 0; j < 3; j++) {
      amounts[j] = withinFilm(reached[j], slopeWithinFilm(reached[j]));
      if (amounts[j] === reached[j]) continue;
      for (let k = 0; k < 3; k++) densities[k] -= line[3 * k + j] * (reached[j] - amounts[j]);
    }
    return taken;
  };
}

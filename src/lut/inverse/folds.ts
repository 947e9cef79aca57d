import type { CodeEnds } from '../../colour/signal-range.js';
import { determinant3, type Matrix3, type Run } from '../../maths/matrix3.js';
import { recorded, spreadColours } from './normal-equations.js';

/** Where a look turns the cube inside out, and which recorded colours such places share with others. */
export interface Folds {
  /** Whether a colour, or another one recorded near it, lies where the look is turned inside out. */
  meets(colour: readonly number[], burnt: readonly number[]): boolean;
}

/** Step for slopes of the look: wide enough to look past the kinks between the nodes of a 65-point table. */
const slopeStep = 1 / 64;
/** Colours a side that are looked at, and cells a side in which their recordings are noted. */
const steps = 48;
const cells = 24;
/** Slopes flatter than this in volume have no side to turn: clipped and all but clipped places. */
const flat = -1e-4;

/** For a run of colours, whether the determinant of the look's slopes is below 0: turned inside out. */
function turnedInsideOut(look: Run, colours: Float64Array, count: number): boolean[] {
  const sides = [0, 1, 2].map((c) =>
    [-1, 1].map((side) => {
      const run = colours.slice(0, 3 * count);
      for (let i = c; i < run.length; i += 3) run[i] += side * slopeStep;
      look(run, count);
      return run;
    }),
  );
  return Array.from({ length: count }, (_, i) => {
    const slope = (row: number, c: number) =>
      (sides[c][1][3 * i + row] - sides[c][0][3 * i + row]) / (2 * slopeStep);
    const m = [0, 1, 2].flatMap((row) => [slope(row, 0), slope(row, 1), slope(row, 2)]);
    return determinant3(m as unknown as Matrix3) < flat;
  });
}

const cellOf = (burnt: ArrayLike<number>, at: number): number => {
  const along = (c: number) => Math.min(cells - 1, Math.floor(recorded(burnt[at + c]) * cells));
  return along(0) + cells * (along(1) + cells * along(2));
};

/** Notes, over an even spread of colours between two codes, where the recordings of inside-out colours fall. */
export function findFolds(look: Run, picture?: CodeEnds): Folds {
  const reached = new Uint8Array(cells ** 3);
  const note = (colours: Float64Array, count: number) => {
    const turned = turnedInsideOut(look, colours, count);
    if (!turned.includes(true)) return;
    const burnt = colours.slice();
    look(burnt, count);
    turned.forEach((inside, i) => {
      if (inside) reached[cellOf(burnt, 3 * i)] = 1;
    });
  };
  spreadColours(steps, 3, note, picture);
  return {
    meets: (colour, burnt) =>
      reached[cellOf(burnt, 0)] === 1 || turnedInsideOut(look, Float64Array.from(colour), 1)[0],
  };
}

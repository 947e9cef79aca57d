/** A function's value at a point; its slopes there are written into `slopes`. */
export type Sloped = (x: readonly number[], slopes: Float64Array) => number;

/** A point and the value of the function there. */
export interface Minimum {
  readonly at: number[];
  readonly value: number;
}

const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
};

/** Share of the fall foreseen by the slope that a step must bring (Armijo). */
const enoughFall = 1e-4;

/**
 * A minimum of a smooth function near a start, by the quasi-Newton steps of Broyden, Fletcher, Goldfarb and Shanno
 * (Nocedal and Wright 2006, Numerical Optimization, chapter 6), each step halved until the function falls.
 * @param reach how far the first step goes along the steepest fall
 * @param enough ends when a step brings less than this
 */
export function minimise(
  f: Sloped,
  start: readonly number[],
  { most = 60, enough = 1e-3, reach = 0.1 } = {},
): Minimum {
  const n = start.length;
  let at = [...start];
  let slopes = new Float64Array(n);
  let value = f(at, slopes);
  const size = Math.sqrt(dot(slopes, slopes));
  if (!(size > 0)) return { at, value };
  /** Inverse of the curvature, as the steps so far have shown it. */
  const inverse = Array.from({ length: n }, (_, i) => at.map((_, j) => (i === j ? reach / size : 0)));
  for (let turn = 0; turn < most; turn++) {
    const way = inverse.map((row) => -dot(row, slopes));
    const fall = dot(way, slopes);
    if (!(fall < 0)) break;
    let next: Minimum | undefined;
    const nextSlopes = new Float64Array(n);
    for (let length = 1; length > 1e-6 && next === undefined; length /= 2) {
      const there = at.map((v, i) => v + length * way[i]);
      const found = f(there, nextSlopes);
      if (found <= value + enoughFall * length * fall) next = { at: there, value: found };
    }
    if (next === undefined) break;
    const step = next.at.map((v, i) => v - at[i]);
    const turned = slopes.map((v, i) => nextSlopes[i] - v);
    const gained = value - next.value;
    [at, value, slopes] = [next.at, next.value, nextSlopes];
    if (gained < enough) break;
    learn(inverse, step, turned);
  }
  return { at, value };
}

/** Takes into the inverse curvature how far the slopes turned over a step. */
function learn(inverse: number[][], step: readonly number[], turned: Float64Array): void {
  const along = dot(step, turned);
  if (!(along > 1e-12)) return;
  const pulled = inverse.map((row) => dot(row, turned));
  const scale = (1 + dot(turned, pulled) / along) / along;
  inverse.forEach((row, i) => {
    for (let j = 0; j < row.length; j++)
      row[j] += scale * step[i] * step[j] - (pulled[i] * step[j] + step[i] * pulled[j]) / along;
  });
}

/** A point and the value of the function there. */
export interface Minimum {
  readonly at: number[];
  readonly value: number;
}

/**
 * A minimum of a function of several variables near a start, by the simplex search of Nelder and Mead (1965, The
 * Computer Journal 7, 308-313): no slopes are asked for, and a kink does not stop it.
 * @param steps how far the first simplex reaches along each variable
 * @param enough ends when the values of the simplex lie this close together
 */
export function minimise(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  { most = 400, enough = 1e-4 } = {},
): Minimum {
  const n = start.length;
  const point = (at: number[]): Minimum => ({ at, value: f(at) });
  let simplex = [
    point([...start]),
    ...steps.map((step, i) => point(start.map((v, j) => (i === j ? v + step : v)))),
  ];
  const byValue = (a: Minimum, b: Minimum) => a.value - b.value;
  for (let turn = 0; turn < most; turn++) {
    simplex.sort(byValue);
    const worst = simplex[n];
    if (worst.value - simplex[0].value < enough) break;
    const centre = start.map((_, j) => simplex.slice(0, n).reduce((sum, p) => sum + p.at[j], 0) / n);
    const along = (t: number) => point(centre.map((c, j) => c + t * (worst.at[j] - c)));
    const mirrored = along(-1);
    if (mirrored.value < simplex[0].value) {
      const further = along(-2);
      simplex[n] = further.value < mirrored.value ? further : mirrored;
    } else if (mirrored.value < simplex[n - 1].value) {
      simplex[n] = mirrored;
    } else {
      const inner = along(mirrored.value < worst.value ? -0.5 : 0.5);
      if (inner.value < Math.min(mirrored.value, worst.value)) simplex[n] = inner;
      else
        simplex = simplex.map((p) =>
          p === simplex[0] ? p : point(p.at.map((v, j) => (v + simplex[0].at[j]) / 2)),
        );
    }
  }
  simplex.sort(byValue);
  return simplex[0];
}

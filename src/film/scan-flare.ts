import type { Run } from '../maths/matrix3.js';

/** Share of the open gate below which a scan does not tell dense from denser: density 3.3, about the densest film there is. */
export const leastTold = 5e-4;

/** Exact down to the least that is told, smooth and above zero below. */
const told = (light: number) => (light >= leastTold ? light : leastTold * Math.exp(light / leastTold - 1));

/**
 * Takes the stray light of a scan off: a share of the open gate that lies over the whole picture, so that a black of
 * density 2.9 is recorded as 2.5 while a faded one is recorded nearly as it is. Linear light relative to the open gate,
 * in place.
 * @param share of the open gate, 0..1; 0.001 to 0.004 is usual (from memory)
 */
export function filmAlone(share: number): Run {
  return (values, count) => {
    if (share > 0) for (let i = 0; i < 3 * count; i++) values[i] = told(values[i] - share);
  };
}

/** Lays the stray light of a scan over film: the opposite of {@link filmAlone}. In place. */
export function withScanFlare(share: number): Run {
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] += share;
  };
}

/**
 * What a run makes of film without the stray light of its scan; the picture keeps the stray light. In place.
 * @param run from film to picture
 * @param toPicture takes stray light to the primaries of the picture, so that what is darker than it keeps its colour
 */
export function behindScanFlare(share: number, run: Run, toPicture: Run): Run {
  if (share === 0) return run;
  const alone = filmAlone(share);
  return (values, count) => {
    const stray = values.slice(0, 3 * count);
    alone(values, count);
    for (let i = 0; i < 3 * count; i++) stray[i] -= values[i];
    toPicture(stray, count);
    run(values, count);
    for (let i = 0; i < 3 * count; i++) values[i] += stray[i];
  };
}

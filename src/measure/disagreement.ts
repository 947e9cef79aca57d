import type { AmountCloud } from './density-cloud.js';
import { type Axis, logLikelihood } from './film-colours.js';
import { minimise, type Sloped } from './minimise.js';
import type { AxisFit } from './neutral-axis.js';

/** A still disagrees when its own axis makes its colours more likely than another by this much (log likelihood). */
const disagreeFrom = 6;

/**
 * How unlikely stills are under an axis whose colour is turned: cyan and yellow against magenta, in factor and offset. A
 * scene's own colour is no excuse here: what speaks against the rest is told, whatever it comes of.
 */
function costOf(clouds: readonly AmountCloud[], { logFactors: f, offsets: o }: Axis): Sloped {
  const noLeans = new Float64Array(2 * clouds.length);
  const all = new Float64Array(6 + noLeans.length);
  return ([c, y, oc, oy], slopes) => {
    const turned: Axis = {
      logFactors: [f[0] + c, f[1], f[2] + y],
      offsets: [o[0] + oc, o[1], o[2] + oy],
    };
    const value = logLikelihood(clouds, turned, noLeans, all);
    slopes.set([-all[0], -all[2], -all[3], -all[5]]);
    return -value;
  };
}

const notTurned = [0, 0, 0, 0];

/**
 * Indices of the stills that speak against the rest; of all where that is half of them or more, since then neither side
 * is the rest. Of one still, none.
 */
export function disagreeingStills(clouds: readonly AmountCloud[], { axis }: AxisFit): number[] {
  if (clouds.length < 2) return [];
  const all = [...clouds.keys()];
  const costs = clouds.map((cloud) => costOf([cloud], axis));
  const least = costs.map((cost) => minimise(cost, notTurned).value);
  const away = (i: number, turn: readonly number[]) => costs[i](turn, new Float64Array(4)) - least[i];
  const disagrees = (turn: readonly number[]) => (i: number) => away(i, turn) > disagreeFrom;
  if (!all.some(disagrees(notTurned))) return [];
  // The reel's axis was drawn to what is usual: who is odd is seen against the stills' own one, drawn to most of them.
  const turnOf = (group: readonly number[]) =>
    minimise(
      costOf(
        group.map((i) => clouds[i]),
        axis,
      ),
      notTurned,
    ).at;
  let rest = all;
  let turn = turnOf(rest);
  do {
    const distances = rest.map((i) => away(i, turn));
    const odd = rest[distances.indexOf(Math.max(...distances))];
    rest = rest.filter((i) => i !== odd);
    turn = turnOf(rest);
  } while (rest.some(disagrees(turn)));
  return 2 * rest.length > all.length ? all.filter((i) => !rest.includes(i)) : all;
}

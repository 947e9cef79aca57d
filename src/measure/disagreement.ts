import type { AmountCloud } from './density-cloud.js';
import { logLikelihood } from './film-colours.js';
import { minimise, type Sloped } from './minimise.js';
import type { AxisFit } from './neutral-axis.js';

/** A still disagrees when its own axis makes its colours more likely than the reel's by this much (log likelihood). */
const disagreeFrom = 6;

/** A scene's own colour is no excuse here: what speaks against the rest is told, whatever it comes of. */
const noLean = [0, 0];

/** Indices of the stills that speak against the axis of the whole reel. Of one still, none. */
export function disagreeingStills(clouds: readonly AmountCloud[], { axis }: AxisFit): number[] {
  if (clouds.length < 2) return [];
  return clouds.flatMap((cloud, i) => {
    // only the colour of the axis may turn: cyan and yellow against magenta, in factor and offset
    const turned: Sloped = ([c, y, oc, oy], slopes) => {
      const [f, o, all] = [axis.logFactors, axis.offsets, new Float64Array(8)];
      const value = logLikelihood(
        [cloud],
        { logFactors: [f[0] + c, f[1], f[2] + y], offsets: [o[0] + oc, o[1], o[2] + oy] },
        noLean,
        all,
      );
      slopes.set([-all[0], -all[2], -all[3], -all[5]]);
      return -value;
    };
    const start = [0, 0, 0, 0];
    return turned(start, new Float64Array(4)) - minimise(turned, start).value > disagreeFrom ? [i] : [];
  });
}

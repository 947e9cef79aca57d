import type { AmountCloud } from './density-cloud.js';
import { type Axis, logLikelihood } from './film-colours.js';
import { minimise } from './minimise.js';
import type { AxisFit } from './neutral-axis.js';

/** A still disagrees when its own axis makes its colours more likely than the reel's by this much (log likelihood). */
const disagreeFrom = 6;

/** Indices of the stills that speak against the axis of the whole reel. Of one still, none. */
export function disagreeingStills(clouds: readonly AmountCloud[], { axis }: AxisFit): number[] {
  if (clouds.length < 2) return [];
  return clouds.flatMap((cloud, i) => {
    const [x0, offsets] = [axis.logFactors, axis.offsets];
    // only the colour of the axis may turn: cyan and yellow against magenta, in factor and offset
    const turned = ([c, y, oc, oy]: readonly number[]): Axis => ({
      logFactors: [x0[0] + c, x0[1], x0[2] + y],
      offsets: [offsets[0] + oc, offsets[1], offsets[2] + oy],
    });
    const cost = (x: readonly number[]) => -logLikelihood([cloud], turned(x));
    const alone = minimise(cost, [0, 0, 0, 0], [0.1, 0.1, 0.05, 0.05], { most: 150 });
    return cost([0, 0, 0, 0]) - alone.value > disagreeFrom ? [i] : [];
  });
}

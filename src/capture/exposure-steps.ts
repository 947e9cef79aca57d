import { percentile } from '../maths/percentile.js';
import type { Triple } from '../maths/matrix3.js';
import type { FieldCell } from './gate-field.js';

const median = (values: readonly number[]) => percentile(Float64Array.from(values), 0.5);

/** How two stills of one frame differ: by how many stops in each channel, and how far their parts disagree about it. */
interface Step {
  readonly stops: Triple;
  readonly disagreement: number;
}

/** Light below this share of the scale's end is too near to black for a ratio. */
const tooDark = 0.003;

/** Undefined where the stills share no well exposed part. */
function stepBetween(
  from: readonly FieldCell[],
  to: readonly FieldCell[],
  fullLight: number,
): Step | undefined {
  const isGood = ({ rgb, burntOut }: FieldCell) => !burntOut && Math.min(...rgb) > tooDark * fullLight;
  const shared = from.flatMap((cell, i) => (isGood(cell) && isGood(to[i]) ? [i] : []));
  if (shared.length === 0) return undefined;
  const ratios = (c: 0 | 1 | 2) => shared.map((i) => Math.log2(to[i].rgb[c] / from[i].rgb[c]));
  const stops: Triple = [median(ratios(0)), median(ratios(1)), median(ratios(2))];
  return { stops, disagreement: median(ratios(1).map((ratio) => Math.abs(ratio - stops[1]))) };
}

const meanLight = (cells: readonly FieldCell[]) => cells.reduce((sum, { rgb }) => sum + rgb[1], 0);

/** Half of the parts disagreeing by more than this about the step from one still to the next: not one frame. */
const mostDisagreement = 0.25;

/** How the stills of a test lie to one another. */
export interface ExposureSteps {
  /** Stops against the first still; undefined where no well exposed part leads to it. */
  readonly againstFirst: readonly (number | undefined)[];
  /** Index of the brightest. */
  readonly brightest: number;
  /** Greatest difference between channels in how far one still is brighter than the next, stops. */
  readonly colourChangeStops: number;
  readonly sameFrame: boolean;
}

/**
 * Compares stills of one frame, each with the next brighter one.
 * @param cells of each still, cut alike @param fullLight light at the end of the scale
 */
export function exposureSteps(cells: readonly (readonly FieldCell[])[], fullLight: number): ExposureSteps {
  const order = [...cells.keys()].sort((a, b) => meanLight(cells[a]) - meanLight(cells[b]));
  const stops = new Map<number, number>([[order[0], 0]]);
  let [colourChangeStops, disagreement] = [0, 0];
  order.slice(1).forEach((to, i) => {
    const from = order[i];
    const step = stepBetween(cells[from], cells[to], fullLight);
    const before = stops.get(from);
    if (step === undefined || before === undefined) return;
    stops.set(to, before + step.stops[1]);
    colourChangeStops = Math.max(colourChangeStops, Math.max(...step.stops) - Math.min(...step.stops));
    disagreement = Math.max(disagreement, step.disagreement);
  });
  const first = stops.get(0);
  const againstFirst = cells.map((_, i) => {
    const own = stops.get(i);
    return own === undefined || first === undefined ? undefined : own - first;
  });
  const sameFrame = disagreement <= mostDisagreement;
  return { againstFirst, brightest: order[order.length - 1], colourChangeStops, sameFrame };
}

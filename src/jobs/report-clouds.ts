import type { Triple } from '../maths/matrix3.js';
import type { Measurement, ReportPoint } from '../measure/index.js';
import type { DensityCloudPicture, NamedPoint } from '../preview/reel-report.js';

/** What points are called, for people. */
export const pointNames = {
  black: 'unexposed film',
  clear: 'bare light',
  film: 'clear film',
  neutral: 'grey',
  blackest: 'darkest',
  clearest: 'lightest',
} as const satisfies Record<ReportPoint['kind'], string>;

const tripleAt = (values: Float64Array, i: number): Triple => [
  values[3 * i],
  values[3 * i + 1],
  values[3 * i + 2],
];
const tone = ([c, m, y]: Triple) => (c + m + y) / 3;
const meanOf = (triples: readonly Triple[]): Triple => {
  const mean = (k: 0 | 1 | 2) => triples.reduce((sum, triple) => sum + triple[k], 0) / triples.length;
  return [mean(0), mean(1), mean(2)];
};

/** Share of the cloud's weight that makes up its lightest and darkest parts. */
const endShare = 0.02;

/** The lightest and darkest parts that were found, by the cloud after; for a reel without marks. */
function foundEnds({ cloud: { before, after, weights } }: Measurement): ReportPoint[] {
  const order = [...weights.keys()].sort((a, b) => tone(tripleAt(after, a)) - tone(tripleAt(after, b)));
  const end = (kind: 'clearest' | 'blackest', list: readonly number[]): ReportPoint => {
    let share = 0;
    const part = list.filter((i) => (share += weights[i]) <= endShare);
    const taken = part.length > 0 ? part : list.slice(0, 1);
    return {
      kind,
      before: meanOf(taken.map((i) => tripleAt(before, i))),
      after: meanOf(taken.map((i) => tripleAt(after, i))),
    };
  };
  return order.length === 0 ? [] : [end('clearest', order), end('blackest', order.slice().reverse())];
}

/** Dots that are drawn of a cloud: more would only cover one another. */
const mostDots = 5000;

/** Every so-manieth point of a cloud. */
function thinned(values: Float64Array): Triple[] {
  const step = Math.max(1, Math.ceil(values.length / 3 / mostDots));
  return Array.from({ length: Math.ceil(values.length / 3 / step) }, (_, i) => tripleAt(values, i * step));
}

/** Tones along which the axis of the greys is drawn. */
const tones = Array.from({ length: 27 }, (_, i) => i / 10);

/**
 * What was grey, before and after. After it is grey by definition; before, each dye follows from after by a factor and an
 * offset, read from two points of the cloud that lie far apart.
 */
function axes({ cloud: { before, after, weights } }: Measurement): { before: Triple[]; after: Triple[] } {
  const order = [...weights.keys()].sort((a, b) => tone(tripleAt(after, a)) - tone(tripleAt(after, b)));
  const sound = tones.map((t): Triple => [t, t, t]);
  if (order.length < 2) return { before: [], after: sound };
  const [light, dark] = [order[0], order[order.length - 1]];
  const faded = (t: number, k: 0 | 1 | 2) => {
    const [a0, a1] = [after[3 * light + k], after[3 * dark + k]];
    const [b0, b1] = [before[3 * light + k], before[3 * dark + k]];
    return a1 === a0 ? b0 : b0 + ((t - a0) / (a1 - a0)) * (b1 - b0);
  };
  return { before: tones.map((t): Triple => [faded(t, 0), faded(t, 1), faded(t, 2)]), after: sound };
}

/** The cloud of a reel's colours before and after, the axis of its greys and the points known by name. */
export function cloudsOf(measurement: Measurement): {
  before: DensityCloudPicture;
  after: DensityCloudPicture;
} {
  const marked = measurement.points.filter(({ kind }) => kind !== 'blackest' && kind !== 'clearest');
  const points = marked.length > 0 ? measurement.points : foundEnds(measurement);
  const axis = axes(measurement);
  const named = (side: 'before' | 'after'): NamedPoint[] =>
    points.map((point) => ({ name: pointNames[point.kind], density: point[side] }));
  return {
    before: { points: thinned(measurement.cloud.before), axis: axis.before, named: named('before') },
    after: { points: thinned(measurement.cloud.after), axis: axis.after, named: named('after') },
  };
}

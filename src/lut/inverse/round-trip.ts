import { rangeScale } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import { percentile } from '../../maths/percentile.js';
import type { Loss, Recording } from './losses.js';
import { losses, lossJudge } from './losses.js';
import { spreadColours } from './normal-equations.js';

/** Parts of the cube, by what a practitioner calls them: level, then colour. */
export const levels = ['shadows', 'mid-tones', 'highlights'] as const;
export const families = ['greys', 'reds', 'yellows', 'greens', 'cyans', 'blues', 'magentas'] as const;

/** A difference between the largest and the smallest channel below which a colour counts as grey. */
const greyWithin = 0.15;

/** Index of a colour's region, 0..1 of the picture: level by the middle of its channels, colour by the largest. */
function regionOf(r: number, g: number, b: number): number {
  const [least, most] = [Math.min(r, g, b), Math.max(r, g, b)];
  const level = Math.min(2, Math.floor(1.5 * (least + most)));
  return (
    level * families.length + (most - least < greyWithin ? 0 : 1 + hueSixth(r, g, b, most, most - least))
  );
}

/** 0 reds, 1 yellows ... 5 magentas: sixths of the hue circle, centred on the pure colours. */
function hueSixth(r: number, g: number, b: number, most: number, chroma: number): number {
  const hue = most === r ? (g - b) / chroma : most === g ? 2 + (b - r) / chroma : 4 + (r - g) / chroma;
  return (Math.round(hue) + 6) % 6;
}

/** Codes of 255, the largest difference of a channel. */
export interface TripFigures {
  readonly median: number;
  readonly p95: number;
  readonly most: number;
  /** Share of the colours that do not come back, 0..1. */
  readonly lost: number;
  /** Share of the colours lost for each cause; the sum is `lost`. */
  readonly byCause: Readonly<Record<Loss, number>>;
}

export interface Region extends TripFigures {
  readonly level: (typeof levels)[number];
  readonly family: (typeof families)[number];
}

/** The honest map of a way back: all colours spread evenly, then region by region. */
export interface RoundTrip extends TripFigures {
  readonly regions: readonly Region[];
}

/** Steps a side of the spread of colours that is judged: 64 000 colours, none of them used in the fit. */
const judgedSteps = 40;

interface Gathered {
  readonly errors: number[];
  readonly causes: Record<Loss, number>;
}

const nothing = (): Gathered => ({
  errors: [],
  causes: Object.fromEntries(Object.keys(losses).map((name) => [name, 0])) as Record<Loss, number>,
});

function figures({ errors, causes }: Gathered): TripFigures {
  const sorted = Float64Array.from(errors);
  const share = (count: number) => count / Math.max(1, errors.length);
  const byCause = Object.fromEntries(
    Object.entries(causes).map(([name, count]) => [name, share(count)]),
  ) as Record<Loss, number>;
  return {
    median: percentile(sorted, 0.5),
    p95: percentile(sorted, 0.95),
    most: percentile(sorted, 1),
    lost: Object.values(byCause).reduce((sum, part) => sum + part, 0),
    byCause,
  };
}

function add(gathered: Gathered, error: number, cause: Loss | undefined): void {
  gathered.errors.push(error);
  if (cause !== undefined) gathered.causes[cause]++;
}

/**
 * Judges a way back on colours spread evenly over the cube of those that pictures have.
 * @param look the burnt-in look @param back its undoing @param recording what lies between the two
 */
export function roundTrip(look: Run, back: Run, recording: Recording): RoundTrip {
  const judge = lossJudge(look, back, recording);
  const { black, white } = recording.picture ?? rangeScale.full;
  const level = (code: number) => (code - black) / (white - black);
  const all = nothing();
  const regions = levels.flatMap(() => families.map(nothing));
  const gather = (colours: Float64Array, count: number) => {
    const { errors, causes } = judge(colours, count);
    for (let i = 0; i < count; i++) {
      const [r, g, b] = colours.subarray(3 * i, 3 * i + 3).map(level);
      const region = regions[regionOf(r, g, b)];
      for (const gathered of [all, region]) add(gathered, errors[i], causes[i]);
    }
  };
  spreadColours(judgedSteps, 2, gather, recording.picture);
  const named = regions.map((gathered, i) => ({
    level: levels[Math.floor(i / families.length)],
    family: families[i % families.length],
    ...figures(gathered),
  }));
  return { ...figures(all), regions: named };
}

import { surprises } from './level-filter.js';
import { harmonicWaves } from './periodic-fit.js';
import type { Track } from './track.js';

/** How a recording's light goes over one pulse, natural logarithms. */
export interface PulseShape {
  /** Log of the light at each frame, mean 0 over the pulse. */
  readonly wave: Float64Array;
  /** How much the sum of squared surprises falls by it. */
  readonly gain: number;
}

/** Harmonics that a shape is told by, and points of a pulse at which it is drawn. */
const harmonics = 12;
const points = 256;

/** Widths of the boxes, shares of a pulse. */
const opens = [0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5];
const rests = [0.03, 0.1, 0.2, 0.3, 0.4, 0.5];
const edges = [0.03, 0.08, 0.13, 0.18, 0.25, 0.33];

/** What shutters usually are, and how far they stray from it (common practice, no source). */
const usual = { open: 0.5, edge: 0.15, stray: 0.07 };
/** How far an exposure strays from what the camera says, as a share of a pulse. */
const exposureStray = 0.03;
/** No shutter is three boxes exactly: likelihoods are believed as if noise had at least this share of the light's power. */
const unlikeness = 1e-3;

const sinc = (x: number) => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

/** Cosine amplitudes of three boxes folded into one another, about the middle. */
const folded = (count: number, widths: readonly number[]): number[] =>
  Array.from({ length: count }, (_, i) =>
    widths.reduce((product, width) => product * sinc((i + 1) * width), 2 * widths[0]),
  );

/** How unusual a shape is, twice a log likelihood. */
function oddity([open, rest, edge]: readonly number[], missed: number | undefined): number {
  const shutter = ((open - usual.open) ** 2 + (edge - usual.edge) ** 2) / usual.stray ** 2;
  return shutter + (missed === undefined ? 0 : ((rest - missed) / exposureStray) ** 2);
}

/** The shape at each point of a pulse: enough harmonics that its corners stand. */
function drawnShape(widths: readonly number[]): Float64Array {
  const amplitudes = folded(96, widths);
  return new Float64Array(points).map((_, i) =>
    amplitudes.reduce(
      (sum, amplitude, k) => sum + amplitude * Math.cos((2 * Math.PI * (k + 1) * i) / points),
      0,
    ),
  );
}

/**
 * Fits what a shutter can do to an exposure. The open part of a pulse, the part of a pulse by which the exposure misses
 * whole ones, and the time that a blade's edge takes across the picture: each averages the light over a box, so the light
 * of a frame by its phase is three boxes folded into one another, at some phase and strength.
 * @param pulsesExposed pulses that an exposure spans, if that is known
 */
export function fitShape(
  { filter, seen, periods }: Track,
  filmPhases: Float64Array,
  pulsesExposed?: number,
): PulseShape {
  const phases = filmPhases.map((phase) => periods * phase);
  const columns = harmonicWaves(phases, harmonics).map((wave) => surprises(filter, wave));
  const size = columns.length;
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, n) => sum + value * b[n], 0);
  const right = columns.map((column) => dot(column, seen));
  const matrix = columns.map((a) => columns.map((b) => dot(a, b)));
  const worth = (amplitudes: readonly number[], at: number) => {
    const amounts = new Float64Array(size);
    for (let k = 0; k < harmonics; k++) {
      amounts[2 * k] = amplitudes[k] * Math.cos(2 * Math.PI * (k + 1) * at);
      amounts[2 * k + 1] = amplitudes[k] * Math.sin(2 * Math.PI * (k + 1) * at);
    }
    let [along, power] = [0, 1e-12];
    for (let i = 0; i < size; i++) {
      along += amounts[i] * right[i];
      let row = 0;
      for (let j = 0; j < size; j++) row += matrix[i][j] * amounts[j];
      power += amounts[i] * row;
    }
    return { gain: along ** 2 / power, strength: along / power, at };
  };
  const start = Math.atan2(right[1], right[0]) / (2 * Math.PI);
  const missed =
    pulsesExposed === undefined ? undefined : Math.abs(pulsesExposed - Math.round(pulsesExposed));
  const tried = missed === undefined ? rests : [Math.max(missed, rests[0] / 4), ...rests];
  const trust = 1 / (1 + unlikeness * worth(folded(harmonics, [usual.open, 0, usual.edge]), start).gain);
  let best = { gain: -Infinity, strength: 0, at: 0, widths: [usual.open, 0, usual.edge], odd: 0 };
  for (const widths of opens.flatMap((open) =>
    tried.flatMap((rest) => edges.map((edge) => [open, rest, edge])),
  )) {
    const amplitudes = folded(harmonics, widths);
    const odd = oddity(widths, missed);
    for (const turn of [0, 0.5]) {
      let here = worth(amplitudes, start + turn);
      for (let step = 0.04; step > 0.002; step /= 2)
        for (const at of [here.at - step, here.at + step]) {
          const there = worth(amplitudes, at);
          if (there.gain > here.gain) here = there;
        }
      if (trust * here.gain - odd > trust * best.gain - best.odd) best = { ...here, widths, odd };
    }
  }
  const shape = drawnShape(best.widths);
  const wave = phases.map((phase) => {
    const turn = phase - best.at;
    return best.strength * shape[Math.floor((turn - Math.floor(turn)) * points) % points];
  });
  return { wave, gain: best.gain };
}

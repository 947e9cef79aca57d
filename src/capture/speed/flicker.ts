import { percentile } from '../../maths/percentile.js';
import { surprises } from './level-filter.js';
import { fitShape } from './pulse-shape.js';
import { fitTrack, type Track } from './track.js';

/** The flicker in a recording. */
export interface MeasuredFlicker {
  /**
   * Percent flicker, 100 x (max - min) / (max + min) of the light from frame to frame (IEEE Std 1789-2015: modulation;
   * also the lighting handbooks' percent flicker). Half of the greatest difference as a share of the middle.
   */
  readonly percent: number;
  /** log2(max / min): the same in stops from the darkest to the lightest frame. */
  readonly stops: number;
  /** Standard error of `percent`. */
  readonly error: number;
  /** Whether it stands out of what the scene and the camera do anyway. */
  readonly seen: boolean;
  /** Logarithm of the light at each frame about its mean, as flicker alone would make it. */
  readonly wave: Float64Array;
  /** The same as it was recorded, the scene's own changes taken out. */
  readonly light: Float64Array;
}

const mostHarmonics = 12;
/** Log likelihood over its price from which flicker is believed: the speed was searched where there is most of it. */
const believed = 15;
/** What the wave's shape leaves open even where nothing is in its way. */
const shapeError = 0.03;
/** The frames speak against an even shutter when harmonics tell so much more of the light, a share of its power. */
const unlikeShare = 0.02;

interface Told {
  readonly wave: Float64Array;
  readonly gain: number;
  /** Log likelihood over that of no flicker, Schwarz's price (1978) of its parameters taken off. */
  readonly worth: number;
  /** Share of the frames at either end that is left out: what a series of harmonics overshoots at its corners. */
  readonly overshoot: number;
}

/**
 * The light over a pulse: what an even shutter does; or, where the frames speak against that (blades unlike each other,
 * light from elsewhere), as many harmonics as they have evidence for.
 */
function likeliest(light: Track, phases: Float64Array, pulsesExposed?: number): Told {
  const price = Math.log(light.seen.length);
  const shape = fitShape(light, phases, pulsesExposed);
  let best: Told = { ...shape, worth: shape.gain / 2 - price, overshoot: 0 };
  for (let count = 2; count <= mostHarmonics; count++) {
    const { values, gain } = fitTrack(light, phases, count);
    const worth = gain / 2 - count * price;
    if (worth > best.worth && shape.gain < (1 - unlikeShare) * gain)
      best = { wave: values, gain, worth, overshoot: 0.015 };
  }
  return best;
}

/** Measures flicker along the followed phase. @param pulsesExposed pulses that an exposure spans, if that is known */
export function measureFlicker(light: Track, phases: Float64Array, pulsesExposed?: number): MeasuredFlicker {
  const { wave, gain, worth, overshoot } = likeliest(light, phases, pulsesExposed);
  const [most, least] = [1 - overshoot, overshoot].map((share) => Math.exp(percentile(wave.slice(), share)));
  const percent = (100 * (most - least)) / (most + least);
  // The gain is the square of the wave over its error, in deviations.
  const error = percent * Math.hypot(Math.sqrt(2 / Math.max(1e-9, gain)), shapeError);
  return {
    percent,
    stops: Math.log2(most / least),
    error,
    seen: worth > believed,
    wave,
    light: recorded(light, wave),
  };
}

/** The wave with what is left around it: surprises of the light without the wave, back in logarithms. */
function recorded({ filter, levels }: Track, wave: Float64Array): Float64Array {
  const rest = surprises(
    filter,
    levels.map((level, n) => level - wave[n]),
  );
  return wave.map((value, n) => value + (filter.weights[n] > 0 ? rest[n] / filter.weights[n] : 0));
}

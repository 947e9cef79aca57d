import { percentile } from '../../maths/percentile.js';
import { surprises } from './level-filter.js';
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
/** Share of the frames at either end that is left out: what a series of harmonics overshoots at its corners. */
const overshoot = 0.015;
/** Log likelihood over its price from which flicker is believed: the speed was searched where there is most of it. */
const believed = 15;
/** What the shape of the wave leaves open even with many harmonics. */
const shapeError = 0.03;
/** Log likelihood above its price that a harmonic must have to be missed when it is not found. */
const missed = 4;

/** Amplitude of the k-th harmonic of a light that jumps between 1 and -1, its edges an eighth of the period wide. */
function jumpHarmonic(k: number): number {
  const edge = (Math.PI * k) / 8;
  return k % 2 === 0 ? 0 : (4 / (Math.PI * k)) * (Math.sin(edge) / edge);
}

/** How far the first harmonics of such a light swing, 1 = the light itself. */
function swingOf(count: number): number {
  let most = 0;
  for (let phase = 0; phase < 0.5; phase += 1 / 256) {
    let sum = 0;
    for (let k = 1; k <= count; k++) sum += jumpHarmonic(k) * Math.sin(2 * Math.PI * k * phase);
    most = Math.max(most, sum);
  }
  return most;
}

/**
 * What harmonics too weak to be seen may take off the swing, a share: the light is one that rounds off by itself, or one
 * that jumps. Nothing when the next harmonic of a jump would have been seen.
 */
function unseenShare(count: number, gain: number, price: number): number {
  const next = count % 2 === 0 ? count + 1 : count + 2;
  const expected = ((gain / 2) * jumpHarmonic(next) ** 2) / jumpHarmonic(1) ** 2;
  return expected > price + missed ? 0 : 1 - 1 / swingOf(count);
}

/** Measures flicker along the followed phase, with as many harmonics as it has evidence for (Schwarz 1978). */
export function measureFlicker(light: Track, phases: Float64Array): MeasuredFlicker {
  const price = Math.log(light.seen.length);
  const fits = Array.from({ length: mostHarmonics }, (_, i) => fitTrack(light, phases, i + 1));
  const worth = fits.map(({ gain }, i) => gain / 2 - (i + 1) * price);
  const best = worth.indexOf(Math.max(...worth));
  const unseen = unseenShare(best + 1, fits[0].gain, price);
  const wave = fits[best].values.map((value) => value * (1 - unseen / 2));
  const [most, least] = [1 - overshoot, overshoot].map((share) => Math.exp(percentile(wave.slice(), share)));
  const percent = (100 * (most - least)) / (most + least);
  // The gain is the square of the wave over its error, in deviations, shared by two amplitudes a harmonic.
  const noise = Math.sqrt((best + 1) / Math.max(1e-9, fits[best].gain));
  const error = percent * Math.hypot(noise, unseen / 2, shapeError);
  return {
    percent,
    stops: Math.log2(most / least),
    error,
    seen: worth[best] > believed,
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

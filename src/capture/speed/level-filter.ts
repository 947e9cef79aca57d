/**
 * How a recording's level wanders without flicker, in logarithms of light: a random walk (what scenes do, and what the
 * errors of the ratios between frames add up to) under white noise (a camera's exposure from frame to frame).
 */
export interface LevelNoise {
  /** Variance of each frame's step from the one before; infinite where a new scene begins. The first counts as one. */
  readonly steps: Float64Array;
  /** Variance of the white noise. */
  readonly white: number;
}

/** The filter's gain and the weight of its surprise at each frame. */
export interface LevelFilter {
  readonly gains: Float64Array;
  /** One over the standard deviation of the surprise; 0 at the first frame of a scene, which nothing foretells. */
  readonly weights: Float64Array;
}

/** The filter for a random walk under noise (Kalman 1960; the local level model of Harvey 1989). */
export function levelFilter({ steps, white }: LevelNoise): LevelFilter {
  const gains = new Float64Array(steps.length);
  const weights = new Float64Array(steps.length);
  let variance = Infinity;
  for (let n = 0; n < steps.length; n++) {
    const foretold = n === 0 ? Infinity : variance + steps[n];
    const surprise = foretold + white;
    weights[n] = surprise < Infinity && surprise > 0 ? 1 / Math.sqrt(surprise) : 0;
    gains[n] = foretold < Infinity ? (surprise > 0 ? foretold / surprise : 1) : 1;
    variance = foretold < Infinity ? (1 - gains[n]) * foretold : white;
  }
  return { gains, weights };
}

/**
 * What a series holds that its past does not foretell, in standard deviations: white noise of variance 1 when the model
 * is right. Linear in the series, so that anything fitted to it can be sent through as well.
 */
export function surprises({ gains, weights }: LevelFilter, series: Float64Array): Float64Array {
  const out = new Float64Array(series.length);
  let level = 0;
  for (let n = 0; n < series.length; n++) {
    const away = series[n] - level;
    out[n] = weights[n] * away;
    level += gains[n] * away;
  }
  return out;
}

/** Logarithm of the likelihood of surprises, up to a constant. */
export function logLikelihood({ weights }: LevelFilter, found: Float64Array): number {
  let sum = 0;
  for (let n = 0; n < found.length; n++) if (weights[n] > 0) sum += Math.log(weights[n]) - found[n] ** 2 / 2;
  return sum;
}

import { type LevelFilter, levelFilter, logLikelihood, surprises } from './level-filter.js';

/** White noise of the level that is tried, deviations; and factors on the errors of the steps. */
const whites = [0, 1e-5, 3e-5, 1e-4, 3e-4, 1e-3, 3e-3, 1e-2, 3e-2, 0.1, 0.3];
const factors = [0.5, 1, 2, 4, 8, 16];
/** A surprise beyond so many deviations is no noise: a scene's light, a flash. The level starts anew there. */
const wild = 4.5;

function likeliest(levels: Float64Array, variances: Float64Array): LevelFilter {
  let best: { readonly filter: LevelFilter; readonly likelihood: number } | undefined;
  for (const factor of factors) {
    const steps = variances.map((variance) => factor ** 2 * variance);
    for (const white of whites) {
      const filter = levelFilter({ steps, white: white ** 2 });
      const likelihood = logLikelihood(filter, surprises(filter, levels));
      if (best === undefined || likelihood > best.likelihood) best = { filter, likelihood };
    }
  }
  return best!.filter;
}

/**
 * The filter for the noise that makes a series of levels, flicker taken out as far as it is known, likeliest; what is
 * wild under it is left out and the noise found again.
 * @param variances of each step, infinite where a scene begins
 */
export function fitLevelNoise(levels: Float64Array, variances: Float64Array): LevelFilter {
  const found = surprises(likeliest(levels, variances), levels);
  return likeliest(
    levels,
    variances.map((variance, n) => (Math.abs(found[n]) > wild ? Infinity : variance)),
  );
}

/**
 * The characteristic curve of a reversal film: density falls as log exposure rises, in a straight line between a
 * shoulder (deep shade) and a toe (highlights), each rounded over its own range.
 */
export interface Characteristic {
  /** Density of fully exposed film and of unexposed film. */
  readonly least: number;
  readonly most: number;
  /** Slope of the straight part, density a decade of exposure. */
  readonly contrast: number;
  /** log10 exposure (a perfect white in full light: 0) at which the straight part would reach the least density. */
  readonly whiteAt: number;
  /** Decades over which highlights and deep shade round off. */
  readonly highlightRounding: number;
  readonly shadeRounding: number;
}

/** Softened ramp: 0 well below 0, x well above; `width` is the range of the bend. */
function softRamp(x: number, width: number): number {
  const u = x / width;
  return u > 30 ? x : width * Math.log1p(Math.exp(u));
}

/** Density at a log10 exposure; always between least and most, always falling. */
export function densityAt(curve: Characteristic, logExposure: number): number {
  const { least, most, contrast, whiteAt, highlightRounding, shadeRounding } = curve;
  const blackAt = whiteAt - (most - least) / contrast;
  const fromWhite = softRamp(whiteAt - logExposure, highlightRounding);
  const beyondBlack = softRamp(blackAt - logExposure, shadeRounding);
  return least + contrast * (fromWhite - beyondBlack);
}

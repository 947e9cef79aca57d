// Stock and print: density, dyes, fading, printing. Knows spectra and the observer; knows nothing of lamps, looks or files.

const ln10 = Math.LN10;

/**
 * The deepest transmittance that is told apart from none: density 6. Far beyond any film (reversal stock ends near
 * 3.6), it keeps logarithms finite where a saturated colour leaves a channel without light.
 */
const floor = 1e-6;

/** Positive and smooth for every input, equal to it where it is well above the floor: (x + sqrt(x^2 + 4 f^2)) / 2. */
export function aboveFloor(linear: number): number {
  return 0.5 * (linear + Math.sqrt(linear * linear + 4 * floor * floor));
}

/**
 * Density of a share of light let through: D = -log10 T (ISO 5-1). Above density 5 it bends towards 6 and never
 * leaves it, so no light at all, and less than none, still have a density.
 * @param transmittance share of the open gate's light, 1 = open gate
 */
export function densityOf(transmittance: number): number {
  return -Math.log(aboveFloor(transmittance)) / ln10;
}

/** The slope of {@link densityOf}: with y = (x + w) / 2 the floor's root w gives dy/dx = y / w, so d log y / dx = 1 / w. */
export function densitySlope(transmittance: number): number {
  return -1 / (ln10 * Math.sqrt(transmittance * transmittance + 4 * floor * floor));
}

/** Share of light that a density lets through: T = 10^-D. */
export function transmittanceOf(density: number): number {
  return Math.exp(-ln10 * density);
}

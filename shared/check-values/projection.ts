/** What projectors and rooms are known to do; each entry with the weight it has. */

/** Correlated colour temperatures of projection lamps, kelvin. Common practice, no source, unless said otherwise. */
export const lampKelvins: Readonly<Record<string, readonly [number, number]>> = {
  incandescent: [2856, 3000],
  'incandescent-high-wattage': [3100, 3300],
  // Run well below its voltage. From the rerating rule: temperature goes with voltage to the power 0.42, so half to three quarters of the voltage.
  'incandescent-dim': [2200, 2600],
  'tungsten-halogen': [3200, 3400],
  'tungsten-halogen-low': [3000, 3200],
  xenon: [5400, 6000],
  // ISO 11664-2; the formula of the standard gives 2855.5 K with today's radiation constant.
  'illuminant-a': [2855, 2857],
  // ISO 11664-2.
  d65: [6503, 6505],
};

/** How much a heat filter raises a lamp's colour temperature, kelvin. From memory. */
export const heatFilterRiseKelvin = [50, 200] as const;

/**
 * System gammas that look right: textbook figures after Bartleson and Breneman 1967 (J. Opt. Soc. Am. 57, 953-957) and
 * Hunt. Common practice; not read in the source.
 */
export const systemGammas = { average: 1, dim: 1.25, dark: 1.5 } as const;

/** Screen at open gate, cd/m2: SMPTE RP 51-1995, 16 fL for 8 mm review rooms. */
export const reviewRoomLuminance = 55;

/**
 * Density: the definition in pairs, and what ISO status A filters see.
 * ISO 5-1 (definition); ISO 5-3:1995 / ANSI-NAPM IT2.18-1996, tables 2 to 4 (spectral products, log10, peak 5).
 */

/** Transmittance and its density, D = -log10 T. */
export const densityPairs = [
  [1, 0],
  [0.5, 0.30103],
  [0.25, 0.60206],
  [0.1, 1],
  [0.01, 2],
  [0.001, 3],
] as const;

export interface SpectralProduct {
  readonly startNm: number;
  readonly stepNm: number;
  /** log10 of the relative response, plus 5. */
  readonly log10Plus5: readonly number[];
}

/**
 * Status A, for transparencies that are looked at: as printed, without the slopes beyond the table. Blue at 480 nm is
 * uncertain (2.989 in two copies of the table, 2.898 in a third); it moves a density by less than 0.005.
 */
export const statusA = {
  red: {
    startNm: 600,
    stepNm: 10,
    log10Plus5: [
      2.568, 4.638, 5.0, 4.871, 4.604, 4.286, 3.9, 3.551, 3.165, 2.776, 2.383, 1.97, 1.551, 1.141, 0.741,
      0.341,
    ],
  },
  green: {
    startNm: 500,
    stepNm: 10,
    log10Plus5: [1.65, 3.822, 4.782, 5.0, 4.906, 4.644, 4.221, 3.609, 2.766, 1.579],
  },
  blue: {
    startNm: 420,
    stepNm: 10,
    log10Plus5: [3.602, 4.819, 5.0, 4.912, 4.62, 4.04, 2.989, 1.566, 0.165],
  },
} as const satisfies Record<'red' | 'green' | 'blue', SpectralProduct>;

/** Status A densities of made-up films, by the tabulated wavelengths only; own arithmetic in two programs. */
export const statusAChecks = [
  { film: 'density 1 everywhere', at: () => 1, red: 1, green: 1, blue: 1 },
  {
    film: 'density (nm - 400) / 300',
    at: (nm: number) => (nm - 400) / 300,
    red: 0.75763,
    green: 0.44883,
    blue: 0.1457,
  },
  {
    film: 'a band at 550 nm',
    at: (nm: number) => Math.exp(-(((nm - 550) / 40) ** 2)),
    red: 0.03643,
    green: 0.7777,
    blue: 0.00238,
  },
  { film: 'density 1.5 above 590 nm, 0.1 below', at: (nm: number) => (nm > 590 ? 1.5 : 0.1), red: 1.5, green: 0.1, blue: 0.1 },
] as const;

/**
 * What dyes of reversal and print stocks look like: peaks in nm, unwanted absorptions as shares of the peak, density of
 * clear film, greatest neutral density. Common practice, no source; individual dyes differ.
 */
export const dyeRanges = {
  peaksNm: { cyan: [640, 665], magenta: [535, 555], yellow: [435, 455] },
  cyanInGreenAndBlue: [0.1, 0.25],
  magentaInBlue: [0.2, 0.35],
  /** 'Little'. */
  magentaInRed: [0, 0.1],
  yellowInGreen: [0, 0.1],
  /** 'Near 0'. */
  yellowInRed: [0, 0.02],
  clear: [0.05, 0.25],
  densest: [2.8, 4],
} as const;

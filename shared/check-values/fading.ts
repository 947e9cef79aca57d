/**
 * The linear bleaching model of digital unfading (e.g. Gschwind and Frey 1994, J. Imaging Sci. Technol. 38, 520-525;
 * Ando et al. 1997, J. Imaging Sci. Technol. 41(3), 259-265): densities D = A c of dye amounts c, faded D_f = A (I - L) c
 * = B D with B = A (I - L) A^-1. A worked example with a made-up dye matrix; arithmetic to 1e-7.
 */
export const bleachingExample = {
  /** Row: red, green, blue density; column: cyan, magenta, yellow dye. */
  absorptions: [1.0, 0.12, 0.02, 0.18, 1.0, 0.08, 0.06, 0.28, 1.0],
  amounts: [0.8, 0.9, 1.0],
  loss: { cyan: 0.45, magenta: 0.1, yellow: 0.2 },
  densities: [0.928, 1.124, 1.3],
  fadedDensities: [0.5532, 0.9532, 1.0532],
  bleach: [
    0.54225583, 0.04243651, 0.00175996, -0.06431726, 0.90981781, -0.00749908, -0.02046207, 0.03103607, 0.79792636,
  ],
  bleachDeterminant: 0.396,
} as const;

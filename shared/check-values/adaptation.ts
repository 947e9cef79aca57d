/** XYZ of standard whites (ASTM E308). */
export const whitesXyz = {
  a: [1.0985, 1, 0.35585],
  d50: [0.96422, 1, 0.82521],
  d55: [0.95682, 1, 0.92149],
  d65: [0.95047, 1, 1.08883],
  d75: [0.94972, 1, 1.22638],
  e: [1, 1, 1],
  c: [0.98074, 1, 1.18232],
} as const;

/** CAT16 in one step between those whites (Li et al. 2017; computed by two programs, 7 decimals). */
export const cat16Rows = [
  { from: 'a', to: 'd65', degree: 1, xyz: [0.3, 0.25, 0.1], adapted: [0.2646418, 0.2492212, 0.3031823], white: [0.95047, 1.0, 1.08883] },
  { from: 'a', to: 'd65', degree: 0.5, xyz: [0.3, 0.25, 0.1], adapted: [0.2823209, 0.2496106, 0.2015912], white: [1.024485, 1.0, 0.72234] },
  { from: 'd65', to: 'a', degree: 1, xyz: [0.3, 0.25, 0.1], adapted: [0.3574282, 0.2513735, 0.0277722], white: [1.0985, 1.0, 0.35585] },
  { from: 'd50', to: 'd65', degree: 1, xyz: [0.3, 0.25, 0.1], adapted: [0.2912671, 0.2498687, 0.1338114], white: [0.95047, 1.0, 1.08883] },
] as const;

/** Degree of adaptation: [adapting luminance cd/m2, average, dim, dark], 6 decimals (CIE 159:2004, CIE 248:2022). */
export const degreeRows = [
  [0, 0.824032, 0.741629, 0.659226], [2, 0.827817, 0.745035, 0.662253], [4, 0.831519, 0.748367, 0.665215],
  [11, 0.843863, 0.759477, 0.67509], [20, 0.858414, 0.772572, 0.686731],
  [31.83, 0.875498, 0.787948, 0.700398], [63.66, 0.911911, 0.82072, 0.729529],
  [100, 0.940656, 0.846591, 0.752525], [200, 0.979987, 0.881988, 0.78399],
  [318.31, 0.994469, 0.895022, 0.795575],
] as const;

/** CAM16 surround parameters c and Nc (CIE 248:2022). */
export const cam16Surrounds = {
  average: { c: 0.69, nc: 1 },
  dim: { c: 0.59, nc: 0.9 },
  dark: { c: 0.525, nc: 0.8 },
} as const;

/**
 * Worked examples: XYZ and white at the scale given, adapting luminance in cd/m2, background Y; lightness J, chroma C,
 * hue h in degrees (samples of CIE 159:2004 and a textbook, CAM16 by two programs, 4 decimals; degree D 6 decimals).
 */
export const cam16Rows = [
  {
    xyz: [19.01, 20, 21.78],
    white: [95.05, 100, 108.88],
    adaptingLuminanceCdM2: 318.31,
    backgroundY: 20,
    surround: 'average',
    degree: 0.994469,
    J: 41.7312,
    C: 0.1034,
    h: 217.068,
  },
  {
    xyz: [57.06, 43.06, 31.96],
    white: [95.05, 100, 108.88],
    adaptingLuminanceCdM2: 31.83,
    backgroundY: 20,
    surround: 'average',
    degree: 0.875498,
    J: 65.4283,
    C: 49.6796,
    h: 17.4866,
  },
  {
    xyz: [3.53, 6.56, 2.14],
    white: [109.85, 100, 35.58],
    adaptingLuminanceCdM2: 318.31,
    backgroundY: 20,
    surround: 'average',
    degree: 0.994469,
    J: 21.3605,
    C: 50.9938,
    h: 178.8672,
  },
  {
    xyz: [19.01, 20, 21.78],
    white: [109.85, 100, 35.58],
    adaptingLuminanceCdM2: 31.83,
    backgroundY: 20,
    surround: 'average',
    degree: 0.875498,
    J: 41.0656,
    C: 49.086,
    h: 259.0337,
  },
  {
    xyz: [19.31, 23.93, 10.14],
    white: [98.88, 90, 32.03],
    adaptingLuminanceCdM2: 200,
    backgroundY: 18,
    surround: 'average',
    degree: 0.979987,
    J: 47.384,
    C: 40.643,
    h: 191.2726,
  },
  {
    xyz: [19.31, 23.93, 10.14],
    white: [98.88, 90, 32.03],
    adaptingLuminanceCdM2: 20,
    backgroundY: 18,
    surround: 'average',
    degree: 0.858414,
    J: 47.1198,
    C: 38.1972,
    h: 186.0063,
  },
  {
    xyz: [19.31, 23.93, 10.14],
    white: [98.88, 90, 32.03],
    adaptingLuminanceCdM2: 200,
    backgroundY: 18,
    surround: 'dim',
    degree: 0.881988,
    J: 52.794,
    C: 37.1718,
    h: 187.0995,
  },
  {
    xyz: [19.31, 23.93, 10.14],
    white: [98.88, 90, 32.03],
    adaptingLuminanceCdM2: 200,
    backgroundY: 18,
    surround: 'dark',
    degree: 0.78399,
    J: 56.6365,
    C: 33.0567,
    h: 182.3197,
  },
] as const;

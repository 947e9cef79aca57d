import type { ReflectanceCurve } from './curve.js';

/**
 * Leaves, bark, snow, water. Source: smooth curves of our own, drawn from memory: chlorophyll's green band and red
 * edge near 700 nm, snow white and faintly blue, the light that comes back out of harbour water green and weak.
 */
export const nature = {
  leafSunny: {
    level: 0.05,
    rises: [
      [0.035, 515, 12],
      [0.34, 705, 11],
    ],
    bands: [[0.16, 550, 24]],
  },
  leafDark: {
    level: 0.03,
    rises: [
      [0.02, 515, 14],
      [0.28, 706, 11],
    ],
    bands: [[0.055, 550, 26]],
  },
  leafYellowish: {
    level: 0.06,
    rises: [
      [0.1, 520, 14],
      [0.3, 704, 11],
    ],
    bands: [[0.14, 556, 28]],
  },
  needles: { level: 0.025, rises: [[0.18, 706, 12]], bands: [[0.045, 545, 30]] },
  grassFar: {
    level: 0.07,
    rises: [
      [0.07, 520, 20],
      [0.2, 704, 12],
    ],
    bands: [[0.08, 555, 34]],
  },
  bark: { level: 0.07, rises: [[0.08, 570, 60]] },
  barkDark: { level: 0.04, rises: [[0.04, 580, 60]] },
  snow: { level: 0.93, rises: [[-0.05, 620, 40]] },
  snowTrodden: { level: 0.74, rises: [[-0.03, 620, 50]] },
  harbourWater: { level: 0.012, bands: [[0.034, 520, 48]] },
  cloud: { level: 0.85 },
} as const satisfies Record<string, ReflectanceCurve>;

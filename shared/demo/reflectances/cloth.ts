import type { ReflectanceCurve } from './curve.js';

/** Cloth, straw, wool. Source: smooth curves of our own, of the shape that dyed fibres have; measured from no sample. */
export const cloth = {
  white: { level: 0.66, rises: [[0.2, 405, 12]] },
  sailWhite: {
    level: 0.6,
    rises: [
      [0.2, 410, 14],
      [0.06, 500, 40],
    ],
  },
  cream: {
    level: 0.42,
    rises: [
      [0.2, 440, 25],
      [0.16, 510, 25],
    ],
  },
  straw: {
    level: 0.16,
    rises: [
      [0.22, 490, 28],
      [0.28, 560, 40],
    ],
  },
  red: { level: 0.03, rises: [[0.5, 610, 11]], bands: [[0.03, 430, 30]] },
  wine: { level: 0.03, rises: [[0.2, 606, 16]], bands: [[0.02, 430, 30]] },
  rose: { level: 0.3, rises: [[0.38, 590, 20]], bands: [[0.16, 430, 40]] },
  yellow: { level: 0.07, rises: [[0.62, 512, 15]] },
  mustard: {
    level: 0.05,
    rises: [
      [0.3, 535, 22],
      [0.12, 600, 25],
    ],
  },
  green: { level: 0.05, rises: [[0.1, 690, 12]], bands: [[0.17, 530, 34]] },
  teal: { level: 0.05, bands: [[0.26, 490, 42]] },
  blue: { level: 0.05, rises: [[0.2, 690, 14]], bands: [[0.36, 452, 38]] },
  lightBlue: { level: 0.26, rises: [[0.2, 690, 20]], bands: [[0.36, 455, 52]] },
  navy: { level: 0.022, rises: [[0.1, 700, 14]], bands: [[0.07, 445, 36]] },
  grey: { level: 0.26 },
  charcoal: { level: 0.055 },
  khaki: {
    level: 0.12,
    rises: [
      [0.12, 500, 30],
      [0.12, 580, 40],
    ],
  },
  russet: { level: 0.04, rises: [[0.15, 590, 35]] },
  denim: { level: 0.075, rises: [[0.1, 700, 16]], bands: [[0.13, 455, 48]] },
} as const satisfies Record<string, ReflectanceCurve>;

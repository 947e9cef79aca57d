import type { ReflectanceCurve } from './curve.js';

/** Brick, stone, paint, wood, metal. Source: smooth curves of our own, drawn from memory; measured from no sample. */
export const building = {
  brick: {
    level: 0.07,
    rises: [
      [0.09, 560, 20],
      [0.15, 596, 18],
    ],
  },
  brickDark: {
    level: 0.055,
    rises: [
      [0.05, 560, 22],
      [0.07, 600, 20],
    ],
  },
  brickPale: {
    level: 0.13,
    rises: [
      [0.13, 550, 24],
      [0.16, 594, 20],
    ],
  },
  mortar: { level: 0.3, rises: [[0.09, 520, 50]] },
  granite: { level: 0.3, rises: [[0.03, 520, 60]] },
  plaster: { level: 0.5, rises: [[0.16, 490, 40]] },
  ochrePlaster: {
    level: 0.16,
    rises: [
      [0.24, 530, 28],
      [0.16, 590, 30],
    ],
  },
  slate: { level: 0.1, rises: [[-0.015, 600, 40]] },
  roofTile: { level: 0.08, rises: [[0.26, 592, 20]] },
  varnishedWood: {
    level: 0.045,
    rises: [
      [0.08, 545, 28],
      [0.22, 600, 30],
    ],
  },
  plainWood: {
    level: 0.17,
    rises: [
      [0.14, 500, 40],
      [0.14, 580, 40],
    ],
  },
  darkWood: { level: 0.035, rises: [[0.06, 590, 40]] },
  paintRed: { level: 0.028, rises: [[0.48, 611, 11]], bands: [[0.02, 430, 30]] },
  paintBlue: { level: 0.035, rises: [[0.12, 700, 14]], bands: [[0.3, 458, 34]] },
  paintCream: {
    level: 0.4,
    rises: [
      [0.2, 445, 22],
      [0.16, 510, 24],
    ],
  },
  paintGreen: { level: 0.03, rises: [[0.05, 700, 14]], bands: [[0.1, 520, 32]] },
  paintWhite: { level: 0.6, rises: [[0.2, 412, 10]] },
  iron: { level: 0.045 },
  steel: { level: 0.42, rises: [[0.04, 520, 80]] },
  glass: { level: 0.05, bands: [[0.01, 530, 60]] },
  asphalt: { level: 0.11, rises: [[0.015, 520, 60]] },
} as const satisfies Record<string, ReflectanceCurve>;

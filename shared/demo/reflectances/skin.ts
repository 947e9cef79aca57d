import type { ReflectanceCurve } from './curve.js';

/**
 * Skin, lips and hair. Source: smooth curves of our own, drawn from memory of the trade and measured from no person:
 * melanin as a slow rise, the edge near 590 nm and the dips near 415, 542 and 577 nm as blood shows them.
 */
export const skin = {
  fair: {
    level: 0.25,
    rises: [
      [0.14, 490, 30],
      [0.29, 592, 14],
    ],
    bands: [
      [-0.06, 415, 18],
      [-0.045, 542, 13],
      [-0.05, 577, 9],
    ],
  },
  tanned: {
    level: 0.14,
    rises: [
      [0.12, 500, 32],
      [0.23, 594, 16],
    ],
    bands: [
      [-0.03, 415, 18],
      [-0.025, 542, 13],
      [-0.028, 577, 9],
    ],
  },
  brown: {
    level: 0.08,
    rises: [
      [0.07, 510, 34],
      [0.16, 598, 20],
    ],
    bands: [
      [-0.012, 542, 13],
      [-0.012, 577, 9],
    ],
  },
  deep: {
    level: 0.045,
    rises: [
      [0.03, 520, 36],
      [0.1, 604, 24],
    ],
    bands: [[-0.004, 577, 10]],
  },
  lips: {
    level: 0.15,
    rises: [[0.36, 600, 14]],
    bands: [[-0.04, 550, 22]],
  },
  darkLips: { level: 0.055, rises: [[0.12, 602, 18]] },
  hairBrown: { level: 0.03, rises: [[0.09, 610, 45]] },
  hairBlond: {
    level: 0.1,
    rises: [
      [0.16, 510, 35],
      [0.2, 590, 40],
    ],
  },
  hairBlack: { level: 0.018, rises: [[0.012, 620, 50]] },
  hairGrey: { level: 0.36, rises: [[0.05, 520, 60]] },
} as const satisfies Record<string, ReflectanceCurve>;

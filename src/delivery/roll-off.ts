// How a picture ends and how it fits the device. Knows light and gamuts; knows nothing of film or looks.
import type { Run } from '../maths/matrix3.js';

/** How highlights and shadows end. */
export interface RollOff {
  /** Linear light (0..1) up to which nothing changes. */
  readonly shoulderStart: number;
  /** 0: none, light is cut at 1; 1: the softest. */
  readonly shoulderSoftness: number;
  /** 0: none; 1: the deepest shadows lose all their steepness. */
  readonly toe: number;
}

/** How far up the toe reaches: linear light at which it has lost 63 % of its hold. */
const toeReach = 0.02;

/**
 * The tone curve of a roll-off on linear light. Rises for every setting, never passes 1 when there is a shoulder, and
 * is the identity between toe (its hold fades by a factor e every 0.02) and shoulder.
 */
export function rollOffCurve({ shoulderStart, shoulderSoftness, toe }: RollOff): (light: number) => number {
  const room = 1 - shoulderStart;
  const power = 1.2 / shoulderSoftness;
  const shoulder = (x: number) => {
    const t = (x - shoulderStart) / room;
    // t / (1 + t^p)^(1/p), written so that no power overflows.
    const risen = Math.min(t, 1) / Math.pow(1 + Math.pow(Math.min(t, 1 / t), power), 1 / power);
    return shoulderStart + room * risen;
  };
  return (light) => {
    if (light <= 0) return light * (1 - toe);
    const x = light * (1 - toe * Math.exp(-light / toeReach));
    return shoulderSoftness === 0 || room <= 0 || x <= shoulderStart ? x : shoulder(x);
  };
}

/**
 * Rolls a run off by its highest channel, the other two in proportion: hue and saturation stay, and no channel
 * passes 1. Linear light in the delivery's own primaries, in place.
 */
export function rollOffRun(rollOff: RollOff): Run {
  const curve = rollOffCurve(rollOff);
  return (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const top = Math.max(values[i], values[i + 1], values[i + 2]);
      const gain = top > 0 ? curve(top) / top : 1 - rollOff.toe;
      for (let k = 0; k < 3; k++) values[i + k] *= gain;
    }
  };
}

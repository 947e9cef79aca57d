import { odd, type TransferFunction } from './transfer-function.js';

const breakSignal = 0.04045;
const slope = 12.92;
const offset = 0.055;
const exponent = 2.4;

// The published break in light, 0.0031308, is this one rounded.
const breakLight = breakSignal / slope;

/**
 * sRGB. Odd about zero, nothing is clamped. At the break the decoding leaps by 2e-9 of light (the standard's constants
 * are rounded); light in that gap has the signal of the break.
 */
export const srgb: TransferFunction = {
  title: 'sRGB',
  source: 'IEC 61966-2-1:1999',
  whiteLight: 1,
  decode: odd((signal) =>
    signal <= breakSignal ? signal / slope : ((signal + offset) / (1 + offset)) ** exponent,
  ),
  encode: odd((light) =>
    light <= breakLight
      ? light * slope
      : Math.max(breakSignal, (1 + offset) * light ** (1 / exponent) - offset),
  ),
};

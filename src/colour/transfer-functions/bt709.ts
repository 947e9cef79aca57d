import { odd, type TransferFunction } from './transfer-function.js';

const alpha = 1.099;
const breakLight = 0.018;
const slope = 4.5;
const exponent = 0.45;

const breakSignal = slope * breakLight;

/**
 * The camera curve of BT.709 with its rounded constants, as BT.2020 has it for 10 bits. Odd about zero, nothing is clamped.
 * With these constants the curve leaps by 0.00024 at the break: no light has a signal in between, and all such
 * signals decode to the light of the break.
 */
export const bt709: TransferFunction = {
  title: 'BT.709 camera',
  source: 'ITU-R BT.709-6',
  whiteLight: 1,
  decode: odd((signal) =>
    signal < breakSignal
      ? signal / slope
      : Math.max(breakLight, ((signal + alpha - 1) / alpha) ** (1 / exponent)),
  ),
  encode: odd((light) => (light < breakLight ? light * slope : alpha * light ** exponent - (alpha - 1))),
};

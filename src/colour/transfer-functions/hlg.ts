import { odd, type TransferFunction } from './transfer-function.js';

const a = 0.17883277;
const b = 1 - 4 * a;
const c = 0.5 - a * Math.log(4 * a);

const breakLight = 1 / 12;
const breakSignal = 0.5;

/** HLG signal to scene light, 0..1. */
const decode = odd((signal) =>
  signal <= breakSignal ? signal ** 2 / 3 : (Math.exp((signal - c) / a) + b) / 12,
);

/** Hybrid log-gamma: scene light 0..1, before the display's system gamma. Odd about zero. */
export const hlg: TransferFunction = {
  title: 'HLG',
  source: 'ITU-R BT.2100-2; level of diffuse white, 75 %: Report ITU-R BT.2408',
  whiteLight: decode(0.75),
  decode,
  encode: odd((light) => (light <= breakLight ? Math.sqrt(3 * light) : a * Math.log(12 * light - b) + c)),
};

import type { Primaries } from './primaries.js';

export const bt709: Primaries = {
  title: 'BT.709',
  source: 'ITU-R BT.709-6; the same in sRGB, IEC 61966-2-1:1999',
  red: [0.64, 0.33],
  green: [0.3, 0.6],
  blue: [0.15, 0.06],
  white: [0.3127, 0.329],
};

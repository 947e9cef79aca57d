import type { Primaries } from './primaries.js';

export const bt2020: Primaries = {
  title: 'BT.2020',
  source: 'ITU-R BT.2020-2, BT.2100-2',
  red: [0.708, 0.292],
  green: [0.17, 0.797],
  blue: [0.131, 0.046],
  white: [0.3127, 0.329],
};

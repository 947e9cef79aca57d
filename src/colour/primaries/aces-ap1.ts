import type { Primaries } from './primaries.js';

export const acesAp1: Primaries = {
  title: 'ACES AP1',
  source: 'Academy S-2014-004',
  red: [0.713, 0.293],
  green: [0.165, 0.83],
  blue: [0.128, 0.044],
  white: [0.32168, 0.33767],
};

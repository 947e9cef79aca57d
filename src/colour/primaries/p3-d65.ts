import type { Primaries } from './primaries.js';

export const p3D65: Primaries = {
  title: 'P3-D65',
  source: 'SMPTE EG 432-1:2010',
  red: [0.68, 0.32],
  green: [0.265, 0.69],
  blue: [0.15, 0.06],
  white: [0.3127, 0.329],
};

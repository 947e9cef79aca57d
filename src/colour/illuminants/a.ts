import type { Illuminant } from './illuminant.js';
import { planck } from './planck.js';

/** Tungsten light. The standard gives it as a formula with the c2 of its day, 0.01435 m K, at 2848 K. */
export const a: Illuminant = {
  title: 'incandescent light A',
  source: 'ISO 11664-2:2007',
  spectrum: planck(2848, 0.01435),
};

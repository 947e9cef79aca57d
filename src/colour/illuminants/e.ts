import { fromFunction } from '../spectrum.js';
import type { Illuminant } from './illuminant.js';

export const e: Illuminant = {
  title: 'equal-energy light E',
  source: 'CIE 15:2004',
  spectrum: fromFunction(() => 100),
};

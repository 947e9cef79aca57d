import { sampleLut } from '../../lut/interpolate.js';
import { sampleLattice } from '../../lut/lattice.js';
import type { Cause } from './cause.js';
import { inTurn } from './cause.js';

/** Sizes that devices work with inside (common practice, no source). */
const usual = [9, 16, 17, 25, 32, 33];

export const smallerTable: Cause = {
  title: 'the device resampled the table to a smaller size',
  advice: 'Build the look in the size the device works with, so that nothing is resampled.',
  gentle: true,
  variants: ({ lut, look }) =>
    lut.kind === '1d'
      ? []
      : usual
          .filter((size) => size < lut.size)
          .map((size) => ({
            words: `to ${size} points a side`,
            predict: inTurn(sampleLut(sampleLattice(look, size, lut.domainMin, lut.domainMax))),
          })),
};

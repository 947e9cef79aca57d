import { sampleLut } from '../../lut/interpolate.js';
import type { Cause } from './cause.js';
import { inTurn } from './cause.js';

export const trilinear: Cause = {
  title: 'the device interpolates trilinearly instead of tetrahedrally',
  advice: 'Harmless: nothing to do.',
  gentle: true,
  variants: ({ lut }) =>
    lut.kind === '1d'
      ? []
      : [{ words: 'between the eight nodes of a cell', predict: inTurn(sampleLut(lut, 'trilinear')) }],
};

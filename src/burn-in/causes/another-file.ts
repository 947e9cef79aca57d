import { sampleLut } from '../../lut/interpolate.js';
import type { Cause } from './cause.js';
import { inTurn } from './cause.js';

export const anotherFile: Cause = {
  title: 'another look was burnt in',
  advice: 'Compare the name and the hash of the file in the device with the one on record.',
  gentle: false,
  variants: ({ others }) =>
    others.map(({ name, lut }) => ({ words: `it fits ${name}`, predict: inTurn(sampleLut(lut)) })),
};

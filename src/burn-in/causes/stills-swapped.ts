import { sampleLut } from '../../lut/interpolate.js';
import { undo } from '../../lut/inverse.js';
import type { Cause } from './cause.js';
import { inTurn } from './cause.js';

/** Nodes of the way back: near enough to tell, and fitted in a moment. */
const size = 17;

export const stillsSwapped: Cause = {
  title: 'the two stills were given in the wrong order',
  advice: 'Name the still without the look first, then the one with it.',
  gentle: false,
  variants: ({ lut, holds }) =>
    holds
      ? []
      : [
          {
            words: 'the second is the first with the look taken out',
            predict: inTurn(sampleLut(undo(lut, { size }))),
          },
        ],
};

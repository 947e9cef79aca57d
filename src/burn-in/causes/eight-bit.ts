import type { Cause } from './cause.js';
import { inTurn, onEach } from './cause.js';

/** The steps themselves are counted in the burnt still's codes: means of blocks hardly show them. */
export const eightBit: Cause = {
  title: 'the recording was cut to 8 bits',
  advice: 'Record 10 bits or more, so that the look leaves no steps in smooth surfaces.',
  gentle: true,
  variants: ({ look }) => [
    {
      words: 'all codes lie on 8-bit steps',
      predict: inTurn(
        look,
        onEach((code) => Math.round(255 * code) / 255),
      ),
    },
  ],
};

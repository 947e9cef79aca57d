import type { Cause } from './cause.js';
import { inTurn } from './cause.js';

export const appliedTwice: Cause = {
  title: 'the look was applied twice',
  advice: 'Switch it off in one place: camera, monitor output or the program that made the still.',
  gentle: false,
  variants: ({ look }) => [{ words: 'once on top of the other', predict: inTurn(look, look) }],
};

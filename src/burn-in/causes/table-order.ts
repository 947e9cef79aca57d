import type { Run } from '../../maths/matrix3.js';
import type { Cause } from './cause.js';
import { inTurn } from './cause.js';

const swapRedAndBlue: Run = (values, count) => {
  for (let i = 0; i < 3 * count; i += 3) [values[i], values[i + 2]] = [values[i + 2], values[i]];
};

export const tableOrder: Cause = {
  title: 'red and blue were swapped in reading the table',
  advice:
    'The device reads the rows blue first: give it the file in the order it expects, or another format.',
  gentle: false,
  variants: ({ look }) => [
    { words: 'rows taken blue fastest instead of red', predict: inTurn(swapRedAndBlue, look) },
    { words: 'columns of a row taken blue, green, red', predict: inTurn(look, swapRedAndBlue) },
  ],
};

import type { Check } from './finding.js';
import { atLeast, atMost, percent } from './finding.js';
import { greys, luminances, pictureRange, throughDevice } from './neutral-axis.js';

/** Below half of the display's white a picture looks dull by day (common practice, no source). */
const leastWhite = 0.5;
/** Above this share of white, black is seen as grey (common practice, no source). */
const mostBlack = 0.03;

export const endPoints: Check = {
  question: 'Where do white and black come out?',
  ask: (context) => {
    const { black, white } = pictureRange(context);
    const ends = throughDevice(context, greys([white, black]));
    const [whiteLight, blackLight] = luminances(context.decodeOutput, ends);
    return [
      atLeast({
        name: 'white-point',
        sentence: `White comes out at ${percent(whiteLight)} of the display's light; below ${percent(leastWhite)} it looks dull.`,
        figure: 100 * whiteLight,
        limit: 100 * leastWhite,
        unit: '%',
        severity: 'note',
      }),
      atMost({
        name: 'black-point',
        sentence: `Black comes out at ${percent(blackLight)} of the display's light; above ${percent(mostBlack)} it looks grey.`,
        figure: 100 * blackLight,
        limit: 100 * mostBlack,
        unit: '%',
        severity: 'note',
      }),
    ];
  },
};

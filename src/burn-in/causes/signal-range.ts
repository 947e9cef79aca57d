import { type CodeEnds, eightBitLegal, rangeScale } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import type { Cause, Variant } from './cause.js';
import { inTurn, onEach } from './cause.js';

/** Everything that a device may do to the codes around the look when it takes one range for the other. */
function variantsAt({ black, white }: CodeEnds, look: Run, levels: string): Variant[] {
  const stretch = onEach((code) => (code - black) / (white - black));
  const shrink = onEach((code) => black + code * (white - black));
  const variant = (words: string, ...steps: readonly Run[]): Variant => ({
    words: `${words}${levels}`,
    predict: inTurn(...steps),
  });
  return [
    variant('stretched from legal to full before the look', stretch, look),
    variant('shrunk from full to legal before the look', shrink, look),
    variant('stretched from legal to full after the look', look, stretch),
    variant('shrunk from full to legal after the look', look, shrink),
    variant('stretched before and after the look', stretch, look, stretch),
    variant('shrunk before and after the look', shrink, look, shrink),
    variant('stretched twice after the look', look, stretch, stretch),
    variant('shrunk twice after the look', look, shrink, shrink),
    variant('stretched before the look and shrunk after it', stretch, look, shrink),
    variant('shrunk before the look and stretched after it', shrink, look, stretch),
  ];
}

export const signalRange: Cause = {
  title: 'full and legal range were mistaken for each other',
  advice: 'Set the same range in the camera, the recorder and the program that reads the recording.',
  gentle: false,
  // The levels of 8 bits are not quite those of 10: in a recording of little noise the difference is seen.
  variants: ({ look }) => [
    ...variantsAt(rangeScale.legal, look, ''),
    ...variantsAt(eightBitLegal, look, ', by levels of 8 bits'),
  ],
};

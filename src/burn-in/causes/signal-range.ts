import { fromFull, toFull } from '../../colour/signal-range.js';
import type { Cause } from './cause.js';
import { inTurn, onEach } from './cause.js';

const stretch = onEach((code) => toFull(code));
const shrink = onEach((code) => fromFull(code));

export const signalRange: Cause = {
  title: 'full and legal range were mistaken for each other',
  advice: 'Set the same range in the camera, the recorder and the program that reads the recording.',
  gentle: false,
  variants: ({ look }) => [
    { words: 'stretched from legal to full before the look', predict: inTurn(stretch, look) },
    { words: 'shrunk from full to legal before the look', predict: inTurn(shrink, look) },
    { words: 'stretched from legal to full after the look', predict: inTurn(look, stretch) },
    { words: 'shrunk from full to legal after the look', predict: inTurn(look, shrink) },
    { words: 'stretched before and after the look', predict: inTurn(stretch, look, stretch) },
    { words: 'shrunk before and after the look', predict: inTurn(shrink, look, shrink) },
    { words: 'stretched twice after the look', predict: inTurn(look, stretch, stretch) },
    { words: 'shrunk twice after the look', predict: inTurn(look, shrink, shrink) },
    { words: 'stretched before the look and shrunk after it', predict: inTurn(stretch, look, shrink) },
    { words: 'shrunk before the look and stretched after it', predict: inTurn(shrink, look, stretch) },
  ],
};

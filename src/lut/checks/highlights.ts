import type { Check } from './finding.js';
import { pileUps, type PictureEnd } from './picture-ends.js';

/**
 * A shoulder that ends level, 1 - (1 - x)^2, leaves 4.4 % of its way in the last code of 8 bits and 2.2 % in that of
 * 10: so much a soft end may take. Light cut off at 97 % already takes 3 % at both. The limits follow from that.
 */
const end: PictureEnd = {
  name: 'highlights',
  code: 'last',
  open: 'Highlights stay open',
  lost: 'Highlights burn out',
  // One clipped channel already turns the colour of a sky or a face.
  lostWith: 'one channel',
  limits: { 8: 0.05, 10: 0.025 },
  channelLimit: 0.1,
};

export const highlights: Check = {
  question: 'Are highlights burnt out?',
  ask: (context) => pileUps(context, end),
};

import type { Check } from './finding.js';
import { pileUps, type PictureEnd } from './picture-ends.js';

/**
 * The dark surround's exponent 1.5 on a print of contrast 1.5 is x^2.25 in code values, which leaves 6.3 % of its
 * way in the first code of 8 bits and 3.4 % in that of 10: so much a soft toe may take. The limits follow from that.
 */
const end: PictureEnd = {
  name: 'shadows',
  code: 'first',
  open: 'Shadows stay drawn',
  lost: 'Shadows block up',
  // In the dark a grey is lost only with its last channel: no eye sees the colour of near black.
  lostWith: 'all channels',
  limits: { 8: 0.08, 10: 0.04 },
  channelLimit: 0.1,
};

export const shadows: Check = {
  question: 'Are shadows blocked?',
  ask: (context) => pileUps(context, end),
};

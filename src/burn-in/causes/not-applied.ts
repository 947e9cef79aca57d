import type { Cause } from './cause.js';

export const notApplied: Cause = {
  title: 'the look was not applied',
  advice: 'Load the file and switch it on for the recording, not for the monitor alone.',
  gentle: false,
  variants: () => [{ words: 'the two stills have the same colours', predict: () => {} }],
};

import type { TransferFunction } from './transfer-function.js';

export const linear: TransferFunction = {
  title: 'linear light',
  source: 'the identity',
  whiteLight: 1,
  decode: (signal) => signal,
  encode: (light) => light,
};

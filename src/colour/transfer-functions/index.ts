// The encodings a look can name. Knows signal and light; knows nothing of primaries or legal range.
import { acescct } from './acescct.js';
import { bt1886 } from './bt1886.js';
import { bt709 } from './bt709.js';
import { gamma22, gamma24, gamma26 } from './gamma.js';
import { hlg } from './hlg.js';
import { linear } from './linear.js';
import { pq } from './pq.js';
import { printingDensityLog } from './printing-density-log.js';
import { srgb } from './srgb.js';
import type { TransferFunction } from './transfer-function.js';

export const transferFunctions = {
  linear,
  srgb,
  bt709,
  bt1886,
  'gamma-2.2': gamma22,
  'gamma-2.4': gamma24,
  'gamma-2.6': gamma26,
  hlg,
  pq,
  acescct,
  'printing-density-log': printingDensityLog,
} satisfies Record<string, TransferFunction>;

export type TransferFunctionName = keyof typeof transferFunctions;
export type { TransferFunction } from './transfer-function.js';

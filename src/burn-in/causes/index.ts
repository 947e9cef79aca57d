import { anotherFile } from './another-file.js';
import { appliedTwice } from './applied-twice.js';
import { cameraCurve } from './camera-curve.js';
import type { Cause } from './cause.js';
import { eightBit } from './eight-bit.js';
import { exposure } from './exposure.js';
import { notApplied } from './not-applied.js';
import { signalRange } from './signal-range.js';
import { smallerTable } from './smaller-table.js';
import { stillsSwapped } from './stills-swapped.js';
import { tableOrder } from './table-order.js';
import { trilinear } from './trilinear.js';

/** The usual causes, the simplest first: of equal fits the first is named. */
export const causes = {
  'not-applied': notApplied,
  'stills-swapped': stillsSwapped,
  'applied-twice': appliedTwice,
  'signal-range': signalRange,
  'table-order': tableOrder,
  'camera-curve': cameraCurve,
  exposure,
  trilinear,
  'smaller-table': smallerTable,
  'eight-bit': eightBit,
  'another-file': anotherFile,
} satisfies Record<string, Cause>;

export type CauseName = keyof typeof causes;
export type { Cause, CauseContext, Variant } from './cause.js';

import { rollOffRun } from '../../delivery/roll-off.js';
import type { Run } from '../../maths/matrix3.js';
import { z } from 'zod';
import { numberField } from './section.js';

export const rolloffSchema = z.strictObject({
  shoulderStart: numberField(
    0,
    0.98,
    0.7,
    'linear light up to which highlights stay as they are, 1 is the open gate',
  ),
  shoulderSoftness: numberField(0, 1, 0, 'softness of the shoulder, 0 none to 1 softest'),
  toe: numberField(0, 1, 0, 'how far the deepest shadows are settled, 0 not at all to 1'),
});

export type Rolloff = z.output<typeof rolloffSchema>;

export function compileRolloff(rolloff: Rolloff): Run[] {
  return rolloff.shoulderSoftness === 0 && rolloff.toe === 0 ? [] : [rollOffRun(rolloff)];
}

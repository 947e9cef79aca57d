import { rangeScale } from '../../colour/signal-range.js';
import type { Signal, Signals } from '../../jobs/signal.js';
import { lastCode } from '../../picture/picture.js';
import { fullRangeLimits } from '../../preview/clipping-marks.js';

/** Half a step of eight bits: codes of a texture are compared as fractions. */
const halfStep = 0.5 / 255;

function limitsOf({ range }: Signal, deep: boolean): [black: number, white: number] {
  if (range === 'legal') return [rangeScale.legal.black + halfStep, rangeScale.legal.white - halfStep];
  const bits = deep ? 16 : 8;
  const { black, white } = fullRangeLimits({ bits });
  const slack = deep ? 0 : halfStep;
  return [black / lastCode(bits) + slack, white / lastCode(bits) - slack];
}

/** Codes 0..1 at and beyond which a signal has ended: black and white before, black and white after. */
export const signalCodeLimits = (
  { input, output }: Signals,
  deep: boolean,
): [number, number, number, number] => [...limitsOf(input, deep), ...limitsOf(output, deep)];

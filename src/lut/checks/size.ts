import { limits } from '../formats/limits.js';
import type { Check, Finding } from './finding.js';
import { atMost } from './finding.js';

/** What cameras, monitors and players load (common practice, no source). */
const usualSizes = [17, 33, 65];

/** Points between a size and the usual one nearest to it. */
const distance = (size: number) => Math.min(...usualSizes.map((usual) => Math.abs(size - usual)));

function usualSize(size: number): Finding {
  const usual = usualSizes.includes(size);
  return atMost({
    name: 'usual-size',
    sentence: usual
      ? `${size} points a side is a usual size: devices load 17, 33 or 65.`
      : `${size} points a side is unusual: many devices load only 17, 33 or 65.`,
    figure: distance(size),
    limit: 0,
    unit: 'points from the nearest usual size',
    severity: 'note',
  });
}

export const size: Check = {
  question: 'Will a device load a table of this size?',
  ask: ({ lut }) => {
    if (lut.kind === '1d') return [];
    const most = limits.commonLatticeSize;
    const fits = lut.size <= most;
    const loaded = atMost({
      name: 'size',
      sentence: `${lut.size} points a side ${fits ? 'is not more than' : 'is more than'} the ${most} that programs commonly load.`,
      figure: lut.size,
      limit: most,
      unit: 'points a side',
      severity: 'fault',
    });
    return [loaded, usualSize(lut.size)];
  },
};

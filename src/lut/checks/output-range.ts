import { rangeScale } from '../../colour/signal-range.js';
import { sampleLut } from '../interpolate.js';
import { sampleLattice } from '../lattice.js';
import type { Check } from './finding.js';
import { atMost, percent, shown } from './finding.js';
import { pictureRange } from './neutral-axis.js';

/** Colours a side that are looked at. */
const steps = 33;
/** One code of 10 bits: less lies within the rounding of any device. */
const tolerance = 1 / 1023;
/** Share of colours beyond the range that is let pass: a few extreme corners (EBU R 103 lets pass 1 % of a picture; from memory). */
const mostOutside = 0.01;

export const outputRange: Check = {
  question: 'Do the values stay within what the device takes?',
  ask: (context) => {
    const input = pictureRange(context);
    const { black, white } = rangeScale[context.range];
    const ends = (code: number) => [code, code, code] as const;
    const { values } = sampleLattice(sampleLut(context.lut), steps, ends(input.black), ends(input.white));
    let outside = 0;
    let farthest = 0;
    for (let i = 0; i < values.length; i += 3) {
      const least = Math.min(values[i], values[i + 1], values[i + 2]);
      const most = Math.max(values[i], values[i + 1], values[i + 2]);
      const beyond = Math.max(black - least, most - white);
      if (beyond > tolerance) outside++;
      farthest = Math.max(farthest, beyond);
    }
    const share = outside / steps ** 3;
    const range = context.range === 'full' ? '0 to 1' : `legal range (${shown(black)} to ${shown(white)})`;
    const how = outside === 0 ? '' : `, the farthest by ${shown(farthest)}`;
    return [
      atMost({
        name: 'output-range',
        sentence: `${percent(share)} of the colours come out beyond ${range}${how}; limit ${percent(mostOutside)}.`,
        figure: 100 * share,
        limit: 100 * mostOutside,
        unit: '%',
        severity: 'fault',
      }),
    ];
  },
};

import type { Check } from './finding.js';
import { atMost, channelNames, shown } from './finding.js';
import { evenCodes, greys, throughDevice } from './neutral-axis.js';

/** Greys looked at: every code of 12 bits. */
const steps = 4096;
/** Half a code: less than rounding does. */
const mostFall = 0.5;

/** How far a channel falls below what it had reached before, at worst, in 10-bit codes, and at which grey. */
function largestFall(values: Float64Array, channel: number): { fall: number; at: number } {
  let [top, fall, at] = [-Infinity, 0, 0];
  for (let i = channel; i < values.length; i += 3) {
    top = Math.max(top, values[i]);
    const below = 1023 * (top - values[i]);
    if (below > fall) [fall, at] = [below, Math.floor(i / 3)];
  }
  return { fall, at };
}

export const neutralRises: Check = {
  question: 'Does a brighter grey always come out at least as bright, in red, green and blue?',
  ask: (context) => {
    const { filmGreys } = context;
    const codes = filmGreys ?? greys(evenCodes(steps));
    const values = throughDevice(context, codes.slice());
    const falls = channelNames.map((name, channel) => ({ name, ...largestFall(values, channel) }));
    const worst = falls.reduce((a, b) => (b.fall > a.fall ? b : a));
    const input = [...codes.subarray(3 * worst.at, 3 * worst.at + (filmGreys === undefined ? 1 : 3))];
    const where = ` (${worst.name}, at input ${input.map(shown).join(' ')})`;
    const ofFilm = filmGreys === undefined ? '' : ' of the film';
    return [
      atMost({
        name: 'neutral-rises',
        sentence:
          worst.fall <= mostFall
            ? `Greys${ofFilm} rise all the way: no channel falls back by more than ${mostFall} of a 10-bit code.`
            : `A brighter grey${ofFilm} comes out darker by ${shown(worst.fall)} 10-bit codes${where}; limit ${mostFall}.`,
        figure: worst.fall,
        limit: mostFall,
        unit: '10-bit codes',
        severity: 'fault',
      }),
    ];
  },
};

import { isUnitDomain, rowCount } from '../lattice.js';
import type { Check } from './finding.js';
import { atMost, counted } from './finding.js';

export const structure: Check = {
  question: 'Is every value a number, and does the table take codes from 0 to 1?',
  ask: ({ lut }) => {
    const expected = 3 * rowCount(lut.kind, lut.size);
    const missing = Math.abs(expected - lut.values.length);
    const bad = missing + lut.values.filter((value) => !Number.isFinite(value)).length;
    const ends = [...lut.domainMin.map(Math.abs), ...lut.domainMax.map((end) => Math.abs(end - 1))];
    const beside = Math.max(...ends);
    return [
      atMost({
        name: 'values-finite',
        sentence:
          bad === 0
            ? `All ${counted(expected)} values of the table are there and are numbers.`
            : `${counted(bad)} of ${counted(expected)} values are missing or are no numbers; none may be.`,
        figure: bad,
        limit: 0,
        unit: 'values',
        severity: 'fault',
      }),
      atMost({
        name: 'domain',
        sentence: isUnitDomain(lut)
          ? 'The table takes codes from 0 to 1, as devices expect.'
          : `The table takes codes from ${lut.domainMin.join(' ')} to ${lut.domainMax.join(' ')}, not from 0 to 1; some devices ignore that and show other colours.`,
        figure: beside,
        limit: 0,
        unit: '',
        severity: 'note',
      }),
    ];
  },
};

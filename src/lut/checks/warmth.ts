import { correlatedColourTemperature } from '../../colour/chromaticity.js';
import type { Check, CheckContext, Finding } from './finding.js';
import { atLeast, atMost, counted, shown } from './finding.js';
import { codeOfLight, greys, midGrey, pictureRange, throughDevice } from './neutral-axis.js';

/**
 * Warmer than this a display of common primaries runs out of blue (common practice, no source). A warm look is no
 * fault, whatever the figure.
 */
const warmest = 2500;
/** Distance from Planck's locus at which a white begins to look green or pink rather than warm or cold. Ours. */
const mostDuv = 0.02;
/** Nearer to it a light counts as white: daylight lies 0.003 off, white lamps may lie 0.006 (ANSI C78.377, from memory). */
const whiteDuv = 0.006;

const black = 'comes out black and has no colour';

/** @param duv distance from Planck's locus, CIE 1960 u v, positive above it */
const castText = (duv: number) =>
  Math.abs(duv) <= whiteDuv
    ? `has no cast, ${shown(Math.abs(duv))} Duv`
    : `is ${shown(Math.abs(duv))} Duv towards ${duv > 0 ? 'green' : 'pink'}`;

/** How a grey of the input looks after the LUT. */
function warmthOf(context: CheckContext, name: string, label: string, code: number): Finding[] {
  const run = throughDevice(context, greys([code]));
  context.decodeOutput(run, 1);
  const { kelvin, duv } = correlatedColourTemperature([run[0], run[1], run[2]]);
  const off = Math.abs(duv);
  const [looks, cast] = Number.isNaN(off)
    ? [black, black]
    : [`looks like light of ${counted(Math.round(kelvin))} K`, castText(duv)];
  return [
    atLeast({
      name: `${name}-temperature`,
      sentence: `${label} ${looks}; below ${warmest} K displays run out of blue.`,
      figure: kelvin,
      limit: warmest,
      unit: 'K',
      severity: 'note',
    }),
    atMost({
      name: `${name}-cast`,
      sentence: `${label} ${cast}; from ${mostDuv} green or pink shows (on purpose where a look undoes a cast).`,
      figure: off,
      limit: mostDuv,
      unit: 'Duv',
      severity: 'note',
    }),
  ];
}

export const warmth: Check = {
  question: 'How warm do greys and white come out?',
  ask: (context) => [
    ...warmthOf(context, 'mid-grey', 'A recorded mid-grey', codeOfLight(context, midGrey)),
    ...warmthOf(context, 'white', 'A recorded white', pictureRange(context).white),
  ],
};

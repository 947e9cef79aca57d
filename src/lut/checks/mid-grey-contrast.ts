import type { Check } from './finding.js';
import { shown } from './finding.js';
import { codeOfLight, greys, luminances, midGrey, throughDevice } from './neutral-axis.js';

/** Stops below and above mid-grey between which the slope is taken. */
const halfSpan = 0.25;
/** From flat as fog to hard as lith (common practice, no source). */
const limits = { least: 0.5, most: 2.5 };

export const midGreyContrast: Check = {
  question: 'How hard is the picture about mid-grey?',
  ask: (context) => {
    const codes = [-halfSpan, halfSpan].map((stops) => codeOfLight(context, midGrey * 2 ** stops));
    const input = luminances(context.decodeInput, greys(codes));
    const output = luminances(context.decodeOutput, throughDevice(context, greys(codes)));
    const slope = Math.log(output[1] / output[0]) / Math.log(input[1] / input[0]);
    const limit = slope < 1 ? limits.least : limits.most;
    const stops = `${shown(slope)} ${shown(slope) === '1' ? 'stop' : 'stops'}`;
    const becomes = Number.isFinite(slope)
      ? `one stop of the film becomes ${stops} on the screen`
      : 'there is no light';
    return [
      {
        name: 'mid-grey-contrast',
        sentence: `About mid-grey ${becomes}; usual are ${limits.least} to ${limits.most} stops.`,
        figure: slope,
        limit,
        unit: '',
        pass: slope >= limits.least && slope <= limits.most,
        severity: 'note',
      },
    ];
  },
};

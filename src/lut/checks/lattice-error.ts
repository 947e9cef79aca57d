import { ciede2000Run, labRun } from '../../colour/difference.js';
import { rangeScale } from '../../colour/signal-range.js';
import type { Run } from '../../maths/matrix3.js';
import { percentile } from '../../maths/percentile.js';
import { sampleLut } from '../interpolate.js';
import type { Check, CheckContext } from './finding.js';
import { atMost, counted, shown } from './finding.js';
import { greys } from './neutral-axis.js';

/** CIEDE2000, where 1 is about what an eye can just tell side by side (common practice, no source). */
const limits = { mean: 0.5, most: 2, largest: 5 };

/** Code values through a transform, clipped as a device does, and on to CIELAB under the output's white. */
function labThrough(
  transform: Run,
  samples: Float64Array,
  { decodeOutput, range }: CheckContext,
): Float64Array {
  const run = samples.slice();
  const count = run.length / 3;
  transform(run, count);
  for (let i = 0; i < run.length; i++) run[i] = Math.min(1, Math.max(0, run[i]));
  decodeOutput(run, count);
  const white = greys([rangeScale[range].white]);
  decodeOutput(white, 1);
  labRun(run, count, [white[0], white[1], white[2]]);
  return run;
}

export const latticeError: Check = {
  question: 'How far is the table, between its points, from the look it was made of?',
  ask: (context) => {
    const { lut, exact, samples } = context;
    if (!exact || !samples || samples.length < 3) return [];
    const count = samples.length / 3;
    const differences = new Float64Array(count);
    const table = labThrough(sampleLut(lut), samples, context);
    ciede2000Run(labThrough(exact, samples, context), table, count, differences);
    const mean = differences.reduce((sum, value) => sum + value, 0) / count;
    const most = percentile(differences, 0.99);
    const largest = differences[count - 1];
    const common = { unit: 'CIEDE2000' };
    return [
      atMost({
        ...common,
        name: 'lattice-mean',
        sentence: `On average the table is ${shown(mean)} CIEDE2000 from the exact look; limit ${limits.mean}.`,
        figure: mean,
        limit: limits.mean,
        severity: 'fault',
      }),
      atMost({
        ...common,
        name: 'lattice-99-percent',
        sentence: `99 of 100 colours are within ${shown(most)} CIEDE2000 of the exact look; limit ${limits.most}.`,
        figure: most,
        limit: limits.most,
        severity: 'fault',
      }),
      atMost({
        ...common,
        name: 'lattice-largest',
        sentence: `The farthest of ${counted(count)} colours is ${shown(largest)} CIEDE2000 from the exact look; limit ${limits.largest}.`,
        figure: largest,
        limit: limits.largest,
        severity: 'note',
      }),
    ];
  },
};

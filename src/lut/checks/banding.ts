import type { CheckContext, Check, Finding } from './finding.js';
import { atMost, channelNames, shown } from './finding.js';
import { greys, luminances, pictureRange, throughDevice } from './neutral-axis.js';

/** Darker than this share of white no step is seen: a screen's own glare lies above (common practice, no source). */
const darkest = 1e-3;

/**
 * Largest step of the output, in codes, that a step of one code may become. Ours: at 8 bit the grain of film hides
 * smaller ones; at 10 bit a larger one is a tear in the table, since the steepest log curves are drawn out fourfold.
 */
const mostStep = { 8: 4, 10: 8 } as const;

/** The largest step between the outputs of neighbouring input codes, where the picture is bright enough to see it. */
function largestStep(context: CheckContext, bits: 8 | 10) {
  const most = 2 ** bits - 1;
  const { black, white } = pictureRange(context);
  const first = Math.ceil(black * most);
  const codes = Array.from(
    { length: Math.max(0, Math.floor(white * most) - first + 1) },
    (_, i) => first + i,
  );
  const values = throughDevice(context, greys(codes.map((code) => code / most)));
  const light = luminances(context.decodeOutput, values);
  let worst = { step: 0, slope: 0, channel: channelNames[0] as string, code: first };
  for (let i = 1; i < codes.length; i++) {
    if (!(light[i] >= darkest)) continue;
    channelNames.forEach((channel, c) => {
      const [from, to] = [values[3 * i - 3 + c] * most, values[3 * i + c] * most];
      const step = Math.abs(Math.round(to) - Math.round(from));
      const slope = Math.abs(to - from);
      if (step > worst.step || (step === worst.step && slope > worst.slope))
        worst = { step, slope, channel, code: codes[i] };
    });
  }
  return worst;
}

function bandingAt(context: CheckContext, bits: 8 | 10): Finding {
  const { step, slope, channel, code } = largestStep(context, bits);
  return atMost({
    name: `steps-${bits}-bit`,
    sentence: `At ${bits} bit one step of grey becomes at most ${step} output codes (${channel}, at code ${code}, slope ${shown(slope)}); limit ${mostStep[bits]}.`,
    figure: step,
    limit: mostStep[bits],
    unit: 'codes',
    severity: bits === 8 ? 'note' : 'fault',
  });
}

export const banding: Check = {
  question: 'Do smooth greys break into steps at 8 or 10 bit?',
  ask: (context) => [bandingAt(context, 8), bandingAt(context, 10)],
};

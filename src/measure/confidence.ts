import type { Triple } from '../maths/matrix3.js';
import type { AmountCloud } from './density-cloud.js';
import { type FadingKindName, fadingKinds } from './fading-kinds.js';
import type { Ageing } from './losses.js';
import type { MarkKind, MarkReading } from './marks.js';
import type { AxisFit } from './neutral-axis.js';
import { oneColouredFrom, oneSidedness } from './one-sidedness.js';
import type { OpenGate } from './open-gate.js';

/** How sure the answer is, in a word and as the largest deviation of a loss. */
export interface Confidence {
  readonly word: 'good' | 'fair' | 'thin';
  /** Largest standard deviation among the three losses. */
  readonly largestDeviation: number;
  /** Why it is not better; empty for `good`. */
  readonly reasons: readonly string[];
}

export interface Evidence {
  readonly stills: readonly { readonly name: string }[];
  readonly gate: OpenGate;
  readonly clouds: readonly AmountCloud[];
  readonly marks: Readonly<Record<MarkKind, readonly MarkReading[]>>;
  readonly fit: AxisFit;
  readonly ageing: Ageing;
  readonly goodOrder: boolean;
  readonly loss: Triple;
  readonly uncertainty: { readonly loss: { cyan: number; magenta: number; yellow: number } };
  readonly disagreeing: readonly string[];
}

/** Largest deviation of a loss up to which the answer is good, and fair. */
const deviationLimits = { good: 0.06, fair: 0.1 } as const;
/** Tone that the darkest part must reach, once brought back, for black to be seen. */
const blackSeenFrom = 2;

/** Tone of the darkest part, brought back along the axis. */
function darkestTone({ clouds, fit }: Evidence): number {
  const { logFactors, offsets } = fit.axis;
  let darkest = 0;
  for (const { amounts } of clouds)
    for (let i = 0; i < amounts.length; i += 3) {
      const sound = [0, 1, 2].map((k) => (amounts[i + k] - offsets[k]) * Math.exp(-logFactors[k]));
      darkest = Math.max(darkest, (sound[0] + sound[1] + sound[2]) / 3);
    }
  return darkest;
}

function reasonsOf(evidence: Evidence): string[] {
  const { stills, gate, clouds, marks, fit, disagreeing } = evidence;
  const oneColoured = clouds.filter((cloud) => oneSidedness(cloud, fit.axis) > oneColouredFrom).length;
  const marked = Object.values(marks).some((list) => list.some(({ light }) => light !== undefined));
  const reasons: string[] = [];
  if (stills.length === 1 && !marked)
    reasons.push('one still only and nothing marked: three or four stills tell far more');
  if (darkestTone(evidence) < blackSeenFrom && marks.black.length === 0)
    reasons.push('no part is dark enough to show what black has become');
  if (oneColoured > clouds.length / 2)
    reasons.push('the scene is of one colour, which cannot well be told from fading');
  if (disagreeing.length > 0)
    reasons.push(
      `${disagreeing.join(', ')} ${disagreeing.length === 1 ? 'speaks' : 'speak'} against the rest`,
    );
  if (gate.from === 'burnt-out clear mark')
    reasons.push('the marked light is burnt out, so its colour is not known');
  for (const [kind, list] of Object.entries(marks))
    for (const { light, rectangle } of list)
      if (light === undefined && kind !== 'clear')
        reasons.push(
          `the ${kind} rectangle in still ${rectangle.still} is burnt out or blocked and was not used`,
        );
  return reasons;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

function likeliest(ageing: Ageing): FadingKindName {
  const names = Object.keys(ageing.kinds) as FadingKindName[];
  return names.reduce((a, b) => (ageing.kinds[b] > ageing.kinds[a] ? b : a));
}

/** The answer in words, and how far to trust it. */
export function confidenceOf(evidence: Evidence): { confidence: Confidence; findings: string[] } {
  const { ageing, goodOrder, loss, uncertainty } = evidence;
  const deviations = Object.values(uncertainty.loss);
  const largestDeviation = Math.max(...deviations);
  const reasons = reasonsOf(evidence);
  const byFigure =
    largestDeviation <= deviationLimits.good
      ? 'good'
      : largestDeviation <= deviationLimits.fair
        ? 'fair'
        : 'thin';
  const word = reasons.length === 0 ? byFigure : byFigure === 'thin' || reasons.length > 1 ? 'thin' : 'fair';
  const findings = goodOrder
    ? [`The reel looks in good order (${percent(ageing.kinds['good-order'])} probable) and is left as it is.`]
    : [
        `Likeliest: ${fadingKinds[likeliest(ageing)].title} (${percent(ageing.kinds[likeliest(ageing)])} probable).`,
        ...['Cyan', 'Magenta', 'Yellow'].map(
          (dye, k) => `${dye}: ${percent(loss[k])} lost, give or take ${percent(deviations[k])}.`,
        ),
      ];
  const grounds = reasons.map((reason) => `${reason[0].toUpperCase()}${reason.slice(1)}.`);
  return { confidence: { word, largestDeviation, reasons }, findings: [...findings, ...grounds] };
}

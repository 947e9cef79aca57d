import type { Triple } from '../maths/matrix3.js';
import type { Choice } from './choose-correction.js';
import type { AmountCloud } from './density-cloud.js';
import { type FadingKindName, fadingKinds } from './fading-kinds.js';
import type { MarkKind, MarkReading, Rectangle } from './marks.js';
import { mostlyOneColoured } from './one-sidedness.js';
import type { OpenGate } from './open-gate.js';

/** How sure the answer is, in a word and as what is expected to remain. */
export interface Confidence {
  readonly word: 'good' | 'fair' | 'thin';
  /** Mean CIEDE2000 to the sound reel that is expected with the correction, and as recorded. */
  readonly expected: number;
  readonly expectedAsRecorded: number;
  /** Whether so many stills speak against the others that what is expected is of no reel. */
  readonly divided: boolean;
  /** Why it is not better; empty for `good` only. */
  readonly reasons: readonly string[];
}

export interface Evidence {
  readonly stills: readonly { readonly name: string }[];
  readonly gate: OpenGate;
  readonly clouds: readonly AmountCloud[];
  /** How many scenes they show. */
  readonly scenes: number;
  readonly marks: Readonly<Record<MarkKind, readonly MarkReading[]>>;
  readonly kinds: Readonly<Record<FadingKindName, number>>;
  readonly choice: Choice;
  readonly leftAsItIs: boolean;
  readonly loss: Triple;
  /** One standard deviation of each loss. */
  readonly lossDeviation: Triple;
  readonly disagreeing: readonly string[];
}

/** Expected difference up to which the answer is good, and fair. */
const expectedLimits = { good: 2.5, fair: 4 } as const;
/** How probable good order must be for a reel that is left as it is to be called so; below, both ways are named. */
const goodOrderFrom = 0.75;
/** Tone that the darkest part must reach, once brought back, for black to be seen. */
const blackSeenFrom = 2;

/** Tone of the darkest part, corrected. */
function darkestTone({ clouds, choice }: Evidence): number {
  const { logFactors, offsets } = choice;
  let darkest = 0;
  for (const { amounts } of clouds)
    for (let i = 0; i < amounts.length; i += 3) {
      const sound = [0, 1, 2].map((k) => (amounts[i + k] - offsets[k]) * Math.exp(-logFactors[k]));
      darkest = Math.max(darkest, (sound[0] + sound[1] + sound[2]) / 3);
    }
  return darkest;
}

const undecided = ({ leftAsItIs, kinds }: Evidence): boolean =>
  leftAsItIs && kinds['good-order'] < goodOrderFrom;

/** Half of the stills or more against the others: of which reel is the answer? */
const isDivided = ({ disagreeing, stills }: Evidence): boolean =>
  disagreeing.length > 0 && 2 * disagreeing.length >= stills.length;

function disagreementOf(evidence: Evidence): string {
  const { disagreeing } = evidence;
  const names = disagreeing.join(' and ');
  if (isDivided(evidence)) return `${names} speak against one another, as stills of different reels would`;
  const speak = disagreeing.length === 1 ? 'speaks' : 'speak';
  return `${names} ${speak} against the rest, as a still of another reel would`;
}

const isReadable = ({ light }: MarkReading) => light !== undefined;

/** Named by its still: numbers are those of the stills that are left, not of those that were given. */
const unreadWords = (kind: string, { still, x, y, width, height }: Rectangle, stills: Evidence['stills']) =>
  `the ${kind} rectangle ${x},${y},${width},${height} in ${stills[still - 1].name} is burnt out or blocked and was not used`;

function reasonsOf(evidence: Evidence): string[] {
  const { stills, scenes, gate, clouds, marks, choice, disagreeing } = evidence;
  const marked = Object.values(marks).some((list) => list.some(isReadable));
  const blackMarked = marks.black.some(isReadable);
  const reasons: string[] = [];
  if (stills.length === 1 && !marked)
    reasons.push('one still only, with no mark to rely on: three or four stills tell far more');
  if (stills.length > 1 && scenes === 1 && !marked)
    reasons.push('the stills show one scene, and tell what one still tells: give some of other scenes');
  if (darkestTone(evidence) < blackSeenFrom && !blackMarked)
    reasons.push('no part is dark enough to show what black has become');
  if (undecided(evidence))
    reasons.push(
      blackMarked
        ? 'good order and fading are both still probable'
        : 'there is no black mark to rely on (frame line, border), which would tell fading best',
    );
  if (mostlyOneColoured(clouds, choice))
    reasons.push('the scene is of one colour, which cannot well be told from fading');
  if (disagreeing.length > 0) reasons.push(disagreementOf(evidence));
  if (gate.from === 'burnt-out clear mark')
    reasons.push('the marked light is burnt out, so its colour is not known');
  for (const [kind, list] of Object.entries(marks))
    for (const { light, rectangle } of list)
      if (light === undefined && kind !== 'clear') reasons.push(unreadWords(kind, rectangle, stills));
  return reasons;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** The ways of ageing, the likeliest first. */
const byProbability = (kinds: Evidence['kinds']): FadingKindName[] =>
  (Object.keys(kinds) as FadingKindName[]).sort((a, b) => kinds[b] - kinds[a]);

const dyeNames = ['Cyan', 'Magenta', 'Yellow'] as const;

function findingsOf(evidence: Evidence): string[] {
  const { kinds, leftAsItIs, loss, lossDeviation } = evidence;
  const [kind, next] = byProbability(kinds);
  if (undecided(evidence) && kind === 'good-order')
    return [
      `The reel may be in good order (${percent(kinds[kind])} probable) or faded (likeliest: ${fadingKinds[next].title}, ${percent(kinds[next])}): too little to tell, so it is left as it is.`,
    ];
  if (leftAsItIs && kind === 'good-order')
    return [`The reel looks in good order (${percent(kinds[kind])} probable) and is left as it is.`];
  if (leftAsItIs)
    return [
      `The reel may be faded (likeliest: ${fadingKinds[kind].title}, ${percent(kinds[kind])}), but not surely enough for a correction: it is left as it is.`,
    ];
  return [
    `Likeliest: ${fadingKinds[kind].title} (${percent(kinds[kind])} probable).`,
    ...dyeNames.map(
      (dye, k) => `${dye}: ${percent(loss[k])} lost, give or take ${percent(lossDeviation[k])}.`,
    ),
  ];
}

const words = ['good', 'fair', 'thin'] as const satisfies readonly Confidence['word'][];

/** How good the answer is by what is expected of it, 0..2 as in `words`. */
function rankByFigure(expected: number): number {
  if (expected <= expectedLimits.good) return 0;
  return expected <= expectedLimits.fair ? 1 : 2;
}

/** Said where the figure alone makes the word worse than the reasons do. */
const figureWords = (expected: number) =>
  `what is seen fits sound pictures of rather different colours, on average ${expected.toFixed(1)} from this answer (up to ${expectedLimits.good} is good): more marks (black, something grey) or stills of other scenes would tell them apart`;

/** The answer in words, and how far to trust it. */
export function confidenceOf(evidence: Evidence): { confidence: Confidence; findings: string[] } {
  const { expected, withoutExpected } = evidence.choice;
  const found = reasonsOf(evidence);
  const divided = isDivided(evidence);
  const byReasons = divided || undecided(evidence) ? 2 : Math.min(2, found.length);
  const byFigure = rankByFigure(expected);
  const reasons = byFigure > byReasons ? [...found, figureWords(expected)] : found;
  const word = words[Math.max(byReasons, byFigure)];
  const grounds = reasons.map((reason) => `${reason[0].toUpperCase()}${reason.slice(1)}.`);
  return {
    confidence: { word, expected, expectedAsRecorded: withoutExpected, divided, reasons },
    findings: [...findingsOf(evidence), ...grounds],
  };
}

import { causes } from '../burn-in/causes/index.js';
import { doubts } from '../burn-in/doubts.js';
import type { Explanation, Verdict } from '../burn-in/verify.js';
import { sentenceStart } from './undo-words.js';

const differences = ({ mean, p95 }: Pick<Verdict, 'mean' | 'p95'>) =>
  `mean ${mean.toFixed(2)}, 95th percentile ${p95.toFixed(2)} CIEDE2000`;

/** What an explanation says: `the look was applied twice: once on top of the other`. */
export const causeWords = ({ cause, words }: Explanation): string => `${causes[cause].title}: ${words}`;

/** The verdict in one sentence. */
export function verdictSentence(verdict: Verdict): string {
  return verdict.holds
    ? `The device did what the file says: ${differences(verdict)}.`
    : `The burnt still is not what the file makes of the plain one: ${differences(verdict)}.`;
}

/** The explanation that comes nearest after the named one, gentle ones left out: they are as near as the file itself. */
function runnerUp({ tried, cause }: Verdict): Explanation | undefined {
  return tried.find(({ cause: name }) => name !== cause?.cause && !causes[name].gentle);
}

/** Beyond that a factor says no more: what is left is rounding. */
const farOff = 100;

const nearer = (times: number) =>
  times > farOff ? `more than ${farOff}` : times < 9.95 ? times.toFixed(1) : times.toFixed(0);

/** How much better the named cause fits than the file, and than the next. */
function fitSentence(verdict: Verdict, cause: Explanation): string {
  const next = runnerUp(verdict);
  const left = `Reckoned with that, it is off by ${differences(cause)}`;
  if (next === undefined || cause.rms === 0) return `${left}.`;
  if (verdict.ambiguous) return `${left}; but this fits as well: ${causeWords(next)}.`;
  return `${left}; the next (${causes[next.cause].title}) lies ${nearer(next.rms / cause.rms)} times as far off.`;
}

function causeSentences(verdict: Verdict): string[] {
  const { cause, holds } = verdict;
  if (cause !== undefined)
    return [
      `${holds ? 'Seen' : 'Why'}: ${causeWords(cause)}.`,
      ...(cause.cause === 'eight-bit' ? [] : [fitSentence(verdict, cause)]),
      `What to do: ${causes[cause.cause].advice}`,
    ];
  if (holds) return [];
  const guess = verdict.doubts.includes('few-colours') || verdict.doubts.includes('few-places');
  return guess
    ? ['Why cannot be told from this frame: take both stills of one with more colours.']
    : [
        'Why: none of the usual causes fits. Take both stills again with everything locked; if it stays so, compare the ' +
          'other files at hand with --other.',
      ];
}

/** Where the burnt still lies, in pixels: its pixel x, y shows what the plain still has at x + dx, y + dy. */
function shiftWords({ shift: { dx, dy } }: Verdict): string {
  const parts = [
    ...(Math.abs(dx) < 0.05 ? [] : [`${Math.abs(dx).toFixed(2)} pixels to the ${dx > 0 ? 'left' : 'right'}`]),
    ...(Math.abs(dy) < 0.05 ? [] : [`${Math.abs(dy).toFixed(2)} pixels ${dy > 0 ? 'up' : 'down'}`]),
  ];
  return parts.length === 0
    ? 'The stills lie on one another'
    : `The burnt still lies ${parts.join(' and ')}, which was taken out`;
}

/** What was found, in whole sentences: cause and remedy, how it was looked at, and what speaks against being sure. */
export function verdictSentences(verdict: Verdict): string[] {
  const { noise, blocks } = verdict;
  return [
    ...causeSentences(verdict),
    `${shiftWords(verdict)}; noise between them ${noise.toFixed(1)} codes of 255; ${blocks} places compared.`,
    ...verdict.doubts.map((doubt) => `Be careful: ${doubts[doubt]}.`),
  ].map(sentenceStart);
}

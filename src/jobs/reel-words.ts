import type { Confidence, Measurement } from '../measure/index.js';

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** With its sign; never `-0.00`. */
const density = (value: number) => `${value > -0.005 ? '+' : '-'}${Math.abs(value).toFixed(2)}`;

export const dyeNames = ['cyan', 'magenta', 'yellow'] as const;
export const lightNames = ['red', 'green', 'blue'] as const;

/** `53 % lost (46 to 60)`: a loss and one deviation to each side. */
export function lossWords(loss: number, deviation: number): string {
  const [low, high] = [Math.max(0, loss - deviation), Math.min(1, loss + deviation)];
  const range = `${Math.round(100 * low)} to ${Math.round(100 * high)}`;
  return loss < 0.005 ? `no loss found (${range} %)` : `${percent(loss)} lost (${range})`;
}

/** `+0.08 density (give or take 0.02)`. */
export const stainWords = (stain: number, deviation: number) =>
  `${density(stain)} density (give or take ${deviation.toFixed(2)})`;

/** Said in the place of all findings where the stills speak against one another. */
const noReel =
  'These stills speak against one another, as those of different reels do: measure one reel at a time.';

/** The finding in one sentence, without figures of the dyes. */
export const finding = ({ confidence, findings }: Pick<Measurement, 'confidence' | 'findings'>): string =>
  confidence.divided ? noReel : (findings[0] ?? '');

/** What is gone, one sentence. */
export function lossSentence(measurement: Measurement): string {
  const { leftAsItIs, confidence, loss } = measurement;
  if (leftAsItIs || confidence.divided) return finding(measurement);
  return `${dyeNames.map((dye) => `${dye} ${percent(loss[dye])}`).join(', ')} lost.`;
}

/** Losses from here on are named first in a headline. */
const worthNaming = 0.03;

/** `53 % of its cyan dye, 10 % of its yellow dye`, the largest first. */
function namedLosses({ loss }: Measurement): string[] {
  const lost = dyeNames.filter((dye) => loss[dye] >= worthNaming).sort((a, b) => loss[b] - loss[a]);
  return lost.map((dye) => `${percent(loss[dye])} of its ${dye} dye`);
}

const inList = (parts: readonly string[]) =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;

/** The finding in one or two sentences. */
export function headline(measurement: Measurement): string {
  const { leftAsItIs, confidence, kinds } = measurement;
  if (leftAsItIs || confidence.divided) return finding(measurement);
  const lost = namedLosses(measurement);
  if (kinds['good-order'] >= Math.max(...Object.values(kinds))) {
    const slight = lost.length === 0 ? 'a slight correction' : `giving back ${inList(lost)}`;
    return `This reel may well be in good order (${percent(kinds['good-order'])} probable); ${slight} stands for the doubt that is left.`;
  }
  const gone = lost.length === 0 ? 'hardly any dye' : `about ${inList(lost)}`;
  return `This reel has lost ${gone}. ${finding(measurement)}`.trimEnd();
}

const sureness = {
  good: 'The evidence is good',
  fair: 'The evidence is fair: look at the result before you trust it',
  thin: 'The evidence is THIN: take this as a first guess, not as a measurement',
} as const satisfies Record<Confidence['word'], string>;

/** All that can be said of how sure a measurement is, whole sentences. */
export const surenessSentences = Object.values(sureness).map((words) => `${words}.`);

/** How sure, without a full stop. */
export const surenessWords = ({ word }: Confidence) => sureness[word];

const gateWords = {
  given: 'as given',
  'clear mark': 'from the light marked as clear',
  'burnt-out clear mark': 'at least: the light marked as clear is burnt out',
  'brightest parts': 'guessed from the brightest parts of the stills and a usual exposure',
} as const satisfies Record<Measurement['openGateFrom'], string>;

export const openGateWords = ({ openGate, openGateFrom }: Measurement) =>
  `${openGate.toPrecision(3)} of linear light, ${gateWords[openGateFrom]}`;

export const strayLightWords = (flare: number) =>
  `${Number((100 * flare).toFixed(2))} % of the open gate, taken for the scan's and left in the picture`;

/** A clause as a sentence; a file's name at its start stays as it is. */
const sentenceOf = (clause: string, names: readonly string[]) =>
  names.some((name) => clause.startsWith(name))
    ? `${clause}.`
    : `${clause[0].toUpperCase()}${clause.slice(1)}.`;

/** What speaks against trusting the answer, whole sentences. */
export const doubts = ({ confidence, disagreeing }: Pick<Measurement, 'confidence' | 'disagreeing'>) =>
  confidence.reasons.map((reason) => sentenceOf(reason, disagreeing));

/** How far from the sound reel the picture is thought to be, before and after. */
export const expectedWords = ({ expected, expectedAsRecorded, divided }: Confidence) =>
  divided
    ? 'nothing to rely on'
    : `a mean colour difference of ${expected.toFixed(1)} from the sound reel` +
      (expected < expectedAsRecorded ? `, ${expectedAsRecorded.toFixed(1)} as recorded` : '') +
      ' (CIEDE2000; 1 is just seen)';

/** Everything that was found, one line each, for a terminal. */
export function reelLines(measurement: Measurement, dyesAsked: string): string[] {
  const { loss, stain, uncertainty, dyes, flare } = measurement;
  const row = (name: string, words: string) => `  ${name.padEnd(14)}${words}`;
  return [
    headline(measurement),
    ...dyeNames.map((dye) => row(`${dye} dye`, lossWords(loss[dye], uncertainty.loss[dye]))),
    ...lightNames.map((light) => row(`stain, ${light}`, stainWords(stain[light], uncertainty.stain[light]))),
    row('dyes', `${dyes}, ${dyesAsked === 'auto' ? 'the dye set that fits best' : 'as asked'}`),
    row('open gate', openGateWords(measurement)),
    ...(flare > 0 ? [row('stray light', strayLightWords(flare))] : []),
    row('to expect', expectedWords(measurement.confidence)),
    `${surenessWords(measurement.confidence)}.`,
    ...doubts(measurement).map((doubt) => `  - ${doubt}`),
  ];
}

import type { Look } from '../look/look-schema.js';
import type { Measurement, Still } from '../measure/index.js';
import { fileName } from './file-name.js';
import { lossSentence, surenessSentences, surenessWords } from './reel-words.js';

/** The names of some stills, the first few of many. */
function namesOf(stills: readonly Still[]): string {
  const names = stills.slice(0, 4).map(({ name }) => fileName(name));
  const more = stills.length - names.length;
  return `${names.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** Stands between what was measured and what the look that was filled in says of itself. */
const saidBefore = ' The look it was made like says: ';
const nothingElse = ' A correction alone: it gives back the dyes, and light brighter than film ends softly.';

/** What a measurement writes before the words of others. */
const ownNote = new RegExp(
  `^Measured from [^]*?: [^]*?(?:${surenessSentences.join('|')})(?:${nothingElse})?(?:${saidBefore.trimEnd()})?\\s*`,
);

/**
 * What was measured, before what the look that was filled in says; what an earlier measurement wrote is replaced.
 * @param before the note of that look
 * @param alone whether the look corrects and does nothing else
 */
export function noteOf(
  before: string,
  stills: readonly Still[],
  measurement: Measurement,
  alone: boolean,
): string {
  const kept = before.replace(ownNote, '');
  const own = `Measured from ${namesOf(stills)}: ${lossSentence(measurement)} ${surenessWords(measurement.confidence)}.`;
  const correctsOnly = alone && !measurement.leftAsItIs ? nothingElse : '';
  return `${own}${correctsOnly}${kept === '' ? '' : saidBefore}${kept}`;
}

/** What a look may have at most. */
const longestName = 200;
/** A still's name may take half of it; longer ones are cut in their middle, since they differ at their ends. */
const longestStill = longestName / 2;

function shortName(name: string): string {
  const end = Math.floor((longestStill - 3) / 2);
  return name.length <= longestStill ? name : `${name.slice(0, end)}...${name.slice(-end)}`;
}

const measuredFrom = ', measured from ';

/**
 * Named after the look that was filled in, the first still and how many more there were; the name that an earlier measurement
 * gave is replaced.
 */
export function nameOf(like: Pick<Look, 'name' | 'note'> | undefined, stills: readonly Still[]): string {
  const before = like?.name ?? 'Correction';
  const measuredAt = ownNote.test(like?.note ?? '') ? before.lastIndexOf(measuredFrom) : -1;
  const kept = measuredAt < 0 ? before : before.slice(0, measuredAt);
  const more = stills.length > 1 ? ` and ${stills.length - 1} more` : '';
  const from = `${measuredFrom}${shortName(fileName(stills[0].name))}${more}`;
  return `${kept.slice(0, longestName - from.length)}${from}`;
}

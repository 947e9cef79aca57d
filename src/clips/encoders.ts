import { nearestName } from '../errors/nearest-name.js';
import { InputError } from '../errors/input-error.js';
import { outputOf } from './run.js';
import type { Tools } from './tools.js';

/** The encoders of video that this ffmpeg has. */
async function videoEncoders({ ffmpeg }: Tools): Promise<string[]> {
  const { output } = await outputOf(ffmpeg, ['-hide_banner', '-encoders']);
  return [...output.matchAll(/^ V[A-Z.]{5} (\S+)/gm)].map(([, name]) => name).filter((name) => name !== '=');
}

/** @throws InputError unless this ffmpeg has the encoder */
export async function requireEncoder(tools: Tools, name: string): Promise<void> {
  const names = await videoEncoders(tools);
  if (names.includes(name)) return;
  const near = nearestName(name, names);
  throw new InputError({
    field: '--encoder',
    what: `this ffmpeg has no encoder "${name}"`,
    hint: `${near === undefined ? '' : `Did you mean ${near}? `}ffmpeg -encoders lists those it has.`,
  });
}

/** Options that would send the result elsewhere, or change what is not the encoder's. */
const notTheEncoders =
  /^-(i|y|n|f|map|vf|filter.*|lavfi|r|s|ss|t|to|frames.*|vn|an|c|codec.*|c:.*|vcodec|acodec|report|progress|vstats.*|passlogfile|pass|attach|dump.*|sdp_file|color.*)$/;

/**
 * Options of an encoder as one text: `-crf 16 -preset slow`. Quotes keep blanks together; no shell sees it.
 * @throws InputError unless it is pairs of a name with a dash and a value
 */
export function encoderOptions(text: string): string[] {
  const words = [...text.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(([, a, b, c]) => a ?? b ?? c);
  words.forEach((word, i) => {
    if (i % 2 === 0 && (!/^-[a-z]/i.test(word) || i + 1 === words.length))
      throw new InputError({
        field: '--encoder-options',
        what: `"${word}" is no name with a dash and a value after it`,
        allowed: 'pairs such as "-crf 16 -preset slow"',
      });
    if (i % 2 === 0 && notTheEncoders.test(word))
      throw new InputError({
        field: '--encoder-options',
        what: `${word} is no option of an encoder`,
        hint: 'What is read and where it is written is said by other options of this command.',
      });
  });
  return words;
}

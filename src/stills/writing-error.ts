import { getSystemErrorMap } from 'node:util';

/** What the system says, in its own words, in front of the encoder's complaints. */
const systemWords = /system error: (.+)/;

/** The system's words for its errors, by their code. */
const codes: readonly (readonly [code: string, words: string])[] = [
  ...getSystemErrorMap().values(),
  ['EDQUOT', 'disk quota exceeded'], // Node has no name for it
];

/**
 * The encoder's error, with the code of the system's that was behind it, as Node's own file functions have: EIO where it
 * is none that Node knows.
 */
export function writingError(error: unknown): Error {
  const { message } = error as Error;
  const words = systemWords.exec(message)?.[1].trim().toLowerCase();
  const known = codes.find(([, meaning]) => meaning.toLowerCase() === words);
  return Object.assign(new Error(message), { code: known?.[0] ?? 'EIO' });
}

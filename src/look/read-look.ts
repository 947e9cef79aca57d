import { InputError } from '../errors/input-error.js';
import { jsonFault } from './json-fault.js';
import { type Look, lookSchema } from './look-schema.js';
import { problemsOf, quoted } from './problems.js';
import { repeatedName } from './repeated-name.js';

/** Line, counted from 1, of a position in a text. */
const lineAt = (text: string, position: number) => text.slice(0, position).split('\n').length;

/** The fields of a look file as they stand there. @throws InputError when it is not JSON or has a field twice, with the line */
export function readFields(given: string, file: string): unknown {
  const text = given.replace(/^\uFEFF/, '');
  if (text.trim() === '')
    throw new InputError({ file, what: 'is empty', hint: 'A look file is JSON; see looks/ for examples.' });
  const fault = jsonFault(text);
  if (fault === undefined) {
    requireNamesOnce(text, file);
    return JSON.parse(text);
  }
  const cut = fault === text.length;
  throw new InputError({
    file,
    line: lineAt(text, fault),
    what: cut ? 'the JSON ends too early' : 'this is not JSON',
    hint: cut
      ? 'Is a bracket or a quote missing at the end?'
      : 'Look for a missing or extra comma, a quote left open, or a comment.',
  });
}

/** @param text valid JSON */
function requireNamesOnce(text: string, file: string): void {
  const repeated = repeatedName(text);
  if (repeated === undefined) return;
  throw new InputError({
    file,
    line: lineAt(text, repeated.again),
    what: `${quoted(repeated.name)} is there twice, first in line ${lineAt(text, repeated.first)}`,
    hint: 'Leave one of the two, or put what both say into one.',
  });
}

/** Checks a look given as a value. @throws InputError with every problem, field by field */
export function checkLook(value: unknown, file: string): Look {
  const result = lookSchema.safeParse(value, { reportInput: true });
  if (result.success) return result.data;
  throw new InputError(
    problemsOf(result.error.issues, value, lookSchema).map((problem) => ({ file, ...problem })),
  );
}

/**
 * Reads a look file.
 * @param file its name, for messages
 * @throws InputError when it is not JSON or has a field twice (with the line), or is not a look (field by field)
 */
export function readLook(text: string, file: string): Look {
  return checkLook(readFields(text, file), file);
}

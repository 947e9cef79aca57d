// The command line: options to jobs, results to words. Knows terminal and disk; does no computation of its own.
import type { InputError } from '../errors/input-error.js';
import { sentence } from '../errors/sentence.js';

/** Where words go: results to one stream, progress and notes to the other. */
export interface Terminal {
  readonly result: (line: string) => void;
  readonly note: (line: string) => void;
}

export const terminal: Terminal = {
  result: (line) => process.stdout.write(`${line}\n`),
  note: (line) => process.stderr.write(`${line}\n`),
};

/** Text as it may be printed: control characters of a file name or title could move the cursor. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD');
}

/** All problems of an error, one a line. */
export function tellProblems(error: InputError): void {
  for (const problem of error.problems) terminal.note(`gatelight: ${printable(sentence(problem))}`);
}

/** Notes of a reader, each with the file it is about. */
export function noteAll(file: string, notes: readonly string[]): void {
  for (const text of notes) terminal.note(`note: ${printable(file)}: ${printable(text.replace(/\.$/, ''))}.`);
}

export function printJson(value: unknown): void {
  terminal.result(JSON.stringify(value, null, 2));
}

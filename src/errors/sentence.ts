import type { InputError, Problem } from './input-error.js';

/** A problem in words: `FILE, line N, FIELD: what. Allowed: ... Hint.` */
export function sentence(problem: Problem): string {
  const where = [
    problem.file,
    problem.line === undefined ? undefined : `line ${problem.line}`,
    problem.field,
  ];
  const place = where.filter((part) => part !== undefined).join(', ');
  const allowed = problem.allowed === undefined ? '' : ` Allowed: ${problem.allowed}.`;
  const hint = problem.hint === undefined ? '' : ` ${problem.hint}`;
  return `${place === '' ? '' : `${place}: `}${problem.what}.${allowed}${hint}`;
}

/** All problems of an error, one a line. */
export function sentences(error: InputError): string {
  return error.problems.map(sentence).join('\n');
}

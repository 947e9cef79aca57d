// What a user can do wrong, as data. Knows nothing of the rest of the program.

/** One thing that cannot be worked with: what is wrong, where, and what would have been right. */
export interface Problem {
  /** The file it was found in, as the user named it. */
  readonly file?: string;
  /** Line of that file, counted from 1. */
  readonly line?: number;
  /** Path of the field inside the file, e.g. `projector.lamp`. */
  readonly field?: string;
  /** What is wrong, a clause without a full stop. */
  readonly what: string;
  /** What would have been allowed, in words. */
  readonly allowed?: string;
  /** What to do, one sentence. */
  readonly hint?: string;
}

/** The one error that a user's input can cause. Anything else thrown is a bug of ours. */
export class InputError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: Problem | readonly Problem[]) {
    const list = Array.isArray(problems) ? (problems as readonly Problem[]) : [problems as Problem];
    super(list.map((problem) => problem.what).join('; '));
    this.name = 'InputError';
    this.problems = list;
  }
}

import { InputError } from '../../errors/input-error.js';
import { sentences } from '../../errors/sentence.js';
import type { Store } from '../state/store.js';
import type { Findings } from './findings.js';

/** What the parts of the engine share. */
export interface Workings {
  readonly store: Store;
  readonly findings: Findings;
  /** Findings changed: the page is to be drawn anew. */
  changed(): void;
  /** Shows a problem of a background task that nobody waits for, once. */
  tellProblem(error: unknown): void;
}

/** A problem in words: the user's, or a fault of ours said as one. */
export function problemWords(error: unknown): string {
  if (error instanceof InputError) return sentences(error);
  return `A fault of the page itself: ${error instanceof Error ? error.message : String(error)}.`;
}

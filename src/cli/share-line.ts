import type { Screen } from './commands/apply/progress.js';

/** Milliseconds before a line appears, since most work ends sooner, and between two of them. */
const patience = 1000;
const interval = 250;

/** A line on a terminal that tells how much of some work is done, while nothing else can run. */
export interface ShareLine {
  /** @param share 0..1 */
  tell(share: number): void;
  /** The line goes. */
  end(): void;
}

/**
 * @param what the words before the share
 * @param now a clock in milliseconds
 * @returns what writes nothing at all where `screen` is no terminal
 */
export function shareLine(
  what: string,
  screen: Screen = process.stderr,
  now: () => number = () => performance.now(),
): ShareLine {
  // Back to the line's beginning, and what stands there rubbed out (ECMA-48: CR, EL).
  const rubOut = '\r\u001b[K';
  let [next, written] = [now() + patience, false];
  return {
    tell(share) {
      if (!screen.isTTY || now() < next) return;
      next = now() + interval;
      written = true;
      screen.write(`${rubOut}${what}: ${Math.floor(100 * share)} %`);
    },
    end() {
      if (written) screen.write(rubOut);
    },
  };
}

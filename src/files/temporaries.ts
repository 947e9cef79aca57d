import { unlinkSync } from 'node:fs';

/** Temporary files that must not outlive the process. */
const pending = new Set<string>();

/** Files that the system is making at this moment, in a thread of its own. */
const making = new Set<Promise<unknown>>();

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
let watching = false;

function removeAll(): void {
  for (const path of pending) {
    try {
      unlinkSync(path);
    } catch {
      // Gone already, or out of reach: nothing more can be done while the process ends.
    }
  }
  pending.clear();
}

/** Removes what is pending, then lets the signal do what it would have done without us. */
function end(signal: NodeJS.Signals): void {
  removeAll();
  unwatch();
  if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
}

/** A file that is just being made, or begun meanwhile, would appear after all was removed: it is waited for. */
function onSignal(signal: NodeJS.Signals): void {
  if (making.size === 0) end(signal);
  else void Promise.allSettled(making).then(() => onSignal(signal));
}

function watch(): void {
  if (watching) return;
  for (const signal of signals) process.on(signal, onSignal);
  process.on('exit', removeAll);
  watching = true;
}

function unwatch(): void {
  for (const signal of signals) process.off(signal, onSignal);
  process.off('exit', removeAll);
  watching = false;
}

function unwatchWhenIdle(): void {
  if (pending.size + making.size === 0) unwatch();
}

/** Registers a file to be removed should the process be interrupted or end before it is released. */
export function holdTemporary(path: string): void {
  watch();
  pending.add(path);
}

/** The file is in its place, or removed: it is no longer ours to remove. */
export function releaseTemporary(path: string): void {
  pending.delete(path);
  unwatchWhenIdle();
}

/**
 * Makes a file and registers it, with no moment between the two at which an interruption would leave it behind.
 * @param make makes the file, or throws where it is there already: then it is another's, and not registered
 */
export async function makeTemporary<T>(path: string, make: () => Promise<T>): Promise<T> {
  watch();
  const made = make().then((result) => {
    holdTemporary(path);
    return result;
  });
  making.add(made);
  try {
    return await made;
  } finally {
    making.delete(made);
    unwatchWhenIdle();
  }
}

import { unlinkSync } from 'node:fs';

/** Temporary files that must not outlive the process. */
const pending = new Set<string>();

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

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
function onSignal(signal: NodeJS.Signals): void {
  removeAll();
  unwatch();
  if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
}

function watch(): void {
  for (const signal of signals) process.on(signal, onSignal);
  process.on('exit', removeAll);
}

function unwatch(): void {
  for (const signal of signals) process.off(signal, onSignal);
  process.off('exit', removeAll);
}

/** Registers a file to be removed should the process be interrupted or end before it is released. */
export function holdTemporary(path: string): void {
  if (pending.size === 0) watch();
  pending.add(path);
}

/** The file is in its place, or removed: it is no longer ours to remove. */
export function releaseTemporary(path: string): void {
  pending.delete(path);
  if (pending.size === 0) unwatch();
}

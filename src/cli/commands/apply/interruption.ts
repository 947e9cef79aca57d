const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Runs `work`; should the process be interrupted meanwhile, `say` has the last word, and the process dies of the signal as it
 * would have without us. Temporary files are seen to where they are made.
 */
export async function sayingWhenInterrupted<T>(say: () => void, work: () => Promise<T>): Promise<T> {
  const onSignal = (signal: NodeJS.Signals) => {
    ignore();
    say();
    process.kill(process.pid, signal);
  };
  const ignore = () => {
    for (const signal of signals) process.off(signal, onSignal);
  };
  for (const signal of signals) process.on(signal, onSignal);
  try {
    return await work();
  } finally {
    ignore();
  }
}

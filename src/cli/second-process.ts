import { fork } from 'node:child_process';
import { statSync } from 'node:fs';

/**
 * How the GNU C library is to deal with memory. It takes these from the environment as a process starts, and never again;
 * other libraries pay no heed. Left to itself it gives each of the decoder's threads a heap, and each heap keeps a frame or
 * two of what was freed: memory grew by a quarter over the first hundred frames.
 */
const memorySettings = {
  // One heap for all threads.
  MALLOC_ARENA_MAX: '1',
  // What is up to 32 MiB, the most that may be asked for, comes from it: pages once had are used for the next frame.
  MALLOC_MMAP_THRESHOLD_: String(32 * 2 ** 20),
  // Some frames of 3840 x 2160 at 8 bits are kept, and the rest goes back to the system.
  MALLOC_TRIM_THRESHOLD_: String(128 * 2 ** 20),
} as const;

/** As many words name enough stills that a second start, a twentieth of a second, is soon made up for. */
const manyWords = 16;

const isFolder = (word: string): boolean => {
  try {
    return statSync(word).isDirectory();
  } catch {
    return false;
  }
};

/** Whether a command line is one that puts a reel of frames through a look, as far as can be told at a glance. */
export const takesManyFrames = (words: readonly string[]): boolean =>
  words[0] === 'apply' &&
  (words.length >= manyWords || words.some((word) => /[*?[{]/.test(word) || isFolder(word)));

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** The second process ends with the first, even where that one could not pass a signal on. */
function endWithFirst(): void {
  process.on('disconnect', () => process.kill(process.pid, 'SIGTERM'));
  process.channel?.unref();
}

/** How a process ended: one of the two is null. */
interface End {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
}

/** @returns undefined where no process could be started */
async function endOf(words: readonly string[], env: NodeJS.ProcessEnv): Promise<End | undefined> {
  const second = fork(process.argv[1], words, { env, stdio: ['inherit', 'inherit', 'inherit', 'ipc'] });
  // Ctrl-C in a terminal reaches both processes anyhow; to be told twice does no harm.
  const passOn = (signal: NodeJS.Signals) => second.kill(signal);
  for (const signal of signals) process.on(signal, passOn);
  const end = await new Promise<End | undefined>((resolve) => {
    second.once('error', () => resolve(undefined));
    second.once('exit', (code, signal) => resolve({ code, signal }));
  });
  for (const signal of signals) process.off(signal, passOn);
  return end;
}

/**
 * Runs a command line in a second process, which deals with memory as is good for many frames; this one waits, passes
 * signals on, and ends as the second does.
 * @returns false where that makes no difference, was done already, or cannot be done: the command is still to be run
 */
export async function runInSecondProcess(words: readonly string[]): Promise<boolean> {
  if (process.platform !== 'linux') return false;
  // Set by whoever started us: a user who knows better, or the first process.
  if (process.env.MALLOC_ARENA_MAX !== undefined) {
    endWithFirst();
    return false;
  }
  const end = await endOf(words, { ...process.env, ...memorySettings });
  if (end === undefined) return false;
  if (end.signal !== null) process.kill(process.pid, end.signal);
  process.exitCode = end.code ?? undefined;
  return true;
}

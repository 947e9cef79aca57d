import { randomUUID } from 'node:crypto';
import { link, open, readFile, rename, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { InputError } from '../../errors/input-error.js';
import { holdTemporary, makeTemporary, releaseTemporary } from '../temporaries.js';

/** An append takes milliseconds: a lock that stays as it is for longer than this belongs to a writer that is gone. */
const staleAfterMs = 10_000;
const patienceMs = 20_000;

const errorCode = (error: unknown) => (error as NodeJS.ErrnoException).code;

async function take(lock: string, mark: string): Promise<boolean> {
  try {
    const handle = await makeTemporary(lock, () => open(lock, 'wx'));
    try {
      await handle.writeFile(mark);
    } catch (error) {
      await giveUp(lock);
      throw error;
    } finally {
      await handle.close();
    }
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  }
}

async function giveUp(lock: string): Promise<void> {
  await rm(lock, { force: true });
  releaseTemporary(lock);
}

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}

/** What stands in a lock; undefined when it has just vanished. */
async function markOf(lock: string): Promise<string | undefined> {
  try {
    return await readFile(lock, 'utf8');
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** Whether a mark is that of a process of this computer that has ended. */
function writerGone(mark: string): boolean {
  const [pid, host] = mark.split(' ');
  return host === hostname() && !alive(Number(pid));
}

/** Moves a stale lock aside; if another writer has taken its place meanwhile, that one's lock is put back. */
async function clear(lock: string, staleWith: string): Promise<void> {
  const aside = `${lock}.${randomUUID()}`;
  holdTemporary(aside);
  try {
    await rename(lock, aside);
    if ((await readFile(aside, 'utf8')) !== staleWith) await link(aside, lock);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT' && errorCode(error) !== 'EEXIST') throw error;
  } finally {
    await rm(aside, { force: true });
    releaseTemporary(aside);
  }
}

async function waitFor(lock: string, mark: string, file: string): Promise<void> {
  const began = performance.now();
  // A lock's age is what was seen of it here: the clocks of two computers may differ by more.
  let seen: { readonly mark?: string; readonly since: number } = { since: began };
  while (!(await take(lock, mark))) {
    const held = await markOf(lock);
    const now = performance.now();
    if (held !== seen.mark) seen = { mark: held, since: now };
    if (held !== undefined && (writerGone(held) || now - seen.since > staleAfterMs)) await clear(lock, held);
    else if (now - began > patienceMs)
      throw new InputError({
        file,
        what: `another program holds ${lock}`,
        hint: 'Wait for it to end; if none is running, delete that file.',
      });
    else await pause(2 + 20 * Math.random());
  }
}

/**
 * Runs `work` while holding `FILE.lock`, so that writers follow one another on every file system that can create a
 * file exclusively. A lock left by a writer that died is cleared; an interrupted writer takes its own away.
 * @throws InputError when another writer does not let go within 20 seconds
 */
export async function withLock<T>(file: string, work: () => Promise<T>): Promise<T> {
  const lock = `${file}.lock`;
  const mark = `${process.pid} ${hostname()} ${randomUUID()}`;
  await waitFor(lock, mark, file);
  try {
    return await work();
  } finally {
    if ((await readFile(lock, 'utf8').catch(() => '')) === mark) await rm(lock, { force: true });
    releaseTemporary(lock);
  }
}

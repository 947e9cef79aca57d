import { basename, join } from 'node:path';
import { InputError } from '../../../errors/input-error.js';
import { makeFolder } from '../../../files/make-folder.js';
import { tellProblems } from '../../report.js';
import { applyStill, type Through } from './apply-still.js';

/** Does `work` for every item, `jobs` at a time. */
async function inParallel<T>(
  items: readonly T[],
  jobs: number,
  work: (item: T) => Promise<void>,
): Promise<void> {
  const queue = items.values();
  const worker = async () => {
    for (const item of queue) await work(item);
  };
  await Promise.all(Array.from({ length: jobs }, worker));
}

/** Every still into the folder; one that cannot be done is told and the rest go on. @returns how many were done */
export async function applyFrames(
  stills: readonly string[],
  folder: string,
  jobs: number,
  through: Through,
): Promise<number> {
  await makeFolder(folder);
  let done = 0;
  await inParallel(stills, jobs, async (still) => {
    try {
      await applyStill(still, join(folder, basename(still)), through);
      done++;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      tellProblems(error);
    }
  });
  return done;
}

import { mkdir } from 'node:fs/promises';
import { InputError } from '../errors/input-error.js';
import { fileProblem, systemCode } from './file-problem.js';

/** A folder, and those above it, where they are not there yet. @throws InputError naming the folder and what to do */
export async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch {
    // With folders above it, Node says only that there is none; by itself, what the disk says (read-only, say).
    const problem = await mkdir(folder).catch((plainly: unknown) => plainly);
    if (systemCode(problem) === 'EEXIST')
      throw new InputError({ file: folder, what: 'is a file, not a folder', hint: 'Name another.' });
    if (problem !== undefined) throw new InputError(fileProblem(folder, problem));
  }
}

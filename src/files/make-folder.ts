import { mkdir } from 'node:fs/promises';
import { InputError } from '../errors/input-error.js';
import { fileProblem } from './file-problem.js';

/** A folder, and those above it, where they are not there yet. @throws InputError naming the folder and what to do */
export async function makeFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true }).catch((error: unknown) => {
    throw new InputError(fileProblem(folder, error));
  });
}

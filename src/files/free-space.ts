import { statfs } from 'node:fs/promises';
import { InputError } from '../errors/input-error.js';
import { fileProblem } from './file-problem.js';

/**
 * Bytes that a user may still write to the disk that holds a folder or file.
 * @throws InputError when there is no such folder, or the system does not tell
 */
export async function freeBytes(folder: string): Promise<number> {
  try {
    const { bavail, bsize } = await statfs(folder);
    return bavail * bsize;
  } catch (error) {
    throw new InputError(fileProblem(folder, error));
  }
}

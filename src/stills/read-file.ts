import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import { InputError } from '../errors/input-error.js';
import { type ByteSource } from './byte-source.js';
import { sourceOfFile } from './file-source.js';
import { maxStillBytes } from './limits.js';

/** What keeps a still from being read, by the system's error code. */
const reasons: Readonly<Record<string, { what: string; hint?: string }>> = {
  ENOENT: { what: 'no such file', hint: 'Check the name and the folder it is in.' },
  ENOTDIR: { what: 'a part of the path is a file, not a folder', hint: 'Check the path.' },
  EISDIR: { what: 'is a folder, not a still', hint: 'Name a PNG, JPEG or TIFF file in it.' },
  ELOOP: { what: 'its links lead round in a circle', hint: 'Name the file itself.' },
  ENAMETOOLONG: { what: 'the name is too long for any file' },
  EACCES: { what: 'permission denied', hint: 'Allow the file to be read.' },
  ERR_INVALID_ARG_VALUE: { what: 'is not a name a file can have' },
};

function refuse(file: string, problem: { what: string; allowed?: string; hint?: string }): never {
  throw new InputError({ file, ...problem });
}

async function sizeOf(path: string, handle: FileHandle): Promise<number> {
  const about = await handle.stat();
  if (about.isDirectory()) refuse(path, reasons.EISDIR);
  if (!about.isFile())
    refuse(path, { what: 'is a device or a pipe, not a file', hint: 'Save it as a file first.' });
  if (about.size > maxStillBytes)
    refuse(path, {
      what: 'is too large for a still',
      allowed: `${Math.floor(maxStillBytes / 1e6)} MB at most`,
    });
  return about.size;
}

/**
 * Opens the file of a still for as long as `work` lasts.
 * @throws InputError for a file that is missing, a folder, a device, not permitted, or larger than a still can be
 */
export async function withStillFile<T>(path: string, work: (source: ByteSource) => Promise<T>): Promise<T> {
  let handle: FileHandle | undefined;
  try {
    // Not blocking: opening a pipe that nobody writes to would wait for ever.
    handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    return await work(sourceOfFile(handle.fd, await sizeOf(path, handle)));
  } catch (error) {
    const code = (error as { code?: string }).code;
    if (code === undefined) throw error;
    if (code === 'ENOENT' && path.includes('\uFFFD'))
      return refuse(path, { what: 'no such file', hint: 'If its name is not in UTF-8, rename it.' });
    return refuse(
      path,
      reasons[code] ?? { what: `cannot be read (${code})`, hint: 'Check the disk or the card.' },
    );
  } finally {
    await handle?.close();
  }
}

import type { FileHandle } from 'node:fs/promises';
import { open, realpath } from 'node:fs/promises';
import { dirname } from 'node:path';
import { InputError } from '../../errors/input-error.js';
import { fileProblem } from '../file-problem.js';
import type { ReelEntry } from './entry.js';
import { beginsReelLog, longestRecord, recordLine } from './entry.js';
import { withLock } from './lock.js';

const newline = 0x0a;

/** What the system refuses, in words. Anything else is passed on as it is. */
const refusals: Record<string, string> = {
  ENOSPC: 'the disk is full; nothing was put on record',
  EDQUOT: 'the disk quota is used up; nothing was put on record',
  EFBIG: 'the file may not grow any further; nothing was put on record',
  EACCES: 'may not be written',
  EPERM: 'may not be written',
  EROFS: 'lies on a read-only disk',
  EISDIR: 'is a folder',
  ENOENT: 'its folder does not exist',
  ENOTDIR: 'its folder does not exist',
  ELOOP: 'is a symbolic link that leads nowhere',
  ENAMETOOLONG: 'has too long a name',
};

function refused(error: unknown, file: string): unknown {
  const what = refusals[(error as NodeJS.ErrnoException).code ?? ''];
  if (error instanceof InputError) return error;
  const problem = fileProblem(file, error);
  return new InputError(what === undefined ? problem : { ...problem, what });
}

/** True when the last byte is missing its newline: a write was cut short, by power loss for one. */
async function endsTorn(handle: FileHandle, size: number): Promise<boolean> {
  if (size === 0) return false;
  const last = Buffer.alloc(1);
  await handle.read(last, 0, 1, size - 1);
  return last[0] !== newline;
}

/** @throws InputError for a file of another kind: a line at the end of a still or a recording would spoil it */
async function requireReelLog(handle: FileHandle, file: string): Promise<void> {
  const { buffer, bytesRead } = await handle.read(Buffer.alloc(longestRecord), 0, longestRecord, 0);
  if (!beginsReelLog(buffer.toString('utf8', 0, bytesRead)))
    throw new InputError({
      file,
      what: 'is no reel log, and is left as it is',
      hint: 'Name another file with --log.',
    });
}

/** Writes all bytes at the end of the file, or takes back what went in, and brings them to the disk. */
async function appendWhole(handle: FileHandle, bytes: Uint8Array, before: number): Promise<void> {
  let done = 0;
  try {
    while (done < bytes.length) done += (await handle.write(bytes, done)).bytesWritten;
    await handle.sync();
  } catch (error) {
    const nobodyElse = (await handle.stat()).size === before + done;
    if (nobodyElse) await handle.truncate(before);
    throw error;
  }
}

/** A new name in a folder outlives a power loss only when the folder, too, has been brought to the disk. */
async function syncFolder(file: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(dirname(file), 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** @param path where the file really lies @param file its name as the user gave it */
async function appendLine(path: string, file: string, line: Uint8Array): Promise<void> {
  const handle = await open(path, 'a+');
  try {
    const info = await handle.stat();
    if (!info.isFile()) throw new InputError({ file, what: 'is not an ordinary file' });
    await requireReelLog(handle, file);
    const torn = await endsTorn(handle, info.size);
    await appendWhole(handle, torn ? Buffer.concat([Buffer.of(newline), line]) : line, info.size);
    if (info.size === 0) await syncFolder(path);
  } finally {
    await handle.close();
  }
}

/** Where a file really lies, so that writers who name it by different links wait for one lock. */
async function trueName(file: string): Promise<string> {
  try {
    return await realpath(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return file;
    throw error;
  }
}

/**
 * Puts one reel on record: one line of JSON at the end of `file`, which is made when it does not exist. When this
 * returns, the line is on the disk; when it throws, the file holds what it held before. A torn last line, left by a
 * power loss, is closed with a newline and stays where it is. Lines are appended in one write each (O_APPEND), under a
 * lock, so that several writers never mix.
 * @throws InputError for a record or a file that cannot be used, or a full disk
 */
export async function appendReel(file: string, entry: ReelEntry): Promise<void> {
  const line = recordLine(entry);
  try {
    const name = await trueName(file);
    await withLock(name, () => appendLine(name, file, line));
  } catch (error) {
    throw refused(error, file);
  }
}

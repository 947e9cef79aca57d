import { randomBytes } from 'node:crypto';
import { type BigIntStats, constants } from 'node:fs';
import { access, link, lstat, open, rename, unlink } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { InputError } from '../errors/input-error.js';
import { fileProblem, systemCode } from './file-problem.js';
import { isSource } from './sources.js';
import { holdTemporary, makeTemporary, releaseTemporary } from './temporaries.js';

export type FileData = Uint8Array | string;

export interface WriteOptions {
  /** Replace an existing file. */
  readonly force: boolean;
  /** Files the data was made from, and that are never replaced, whatever `force` says. */
  readonly sources?: readonly string[];
}

/** What stands at a path, links not followed; undefined for nothing. */
async function entryAt(path: string): Promise<BigIntStats | undefined> {
  try {
    return await lstat(path, { bigint: true });
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    throw new InputError(fileProblem(path, error));
  }
}

function refusal(path: string, what: string, hint: string): InputError {
  return new InputError({ file: path, what, hint });
}

const noFolder = (path: string) =>
  refusal(path, `there is no folder ${dirname(path)}`, 'Create it, or choose another.');

/** Codes by which the system says that a folder takes no new files; what else may be wrong is told when one is written. */
const closed = new Set(['ENOENT', 'EACCES', 'EROFS']);

async function requireFolder(path: string): Promise<void> {
  try {
    await access(dirname(path), constants.W_OK);
  } catch (error) {
    if (closed.has(systemCode(error) ?? '')) throw writeProblem(path, error);
  }
}

/**
 * Refuses a target that must not be written, before any work is done for it.
 * @throws InputError for an existing file without `force`, a source, a folder, a link, a device or a pipe, and where the
 * folder that is to hold it is missing or takes no files
 */
export async function checkTarget(path: string, { force, sources = [] }: WriteOptions): Promise<void> {
  const entry = await entryAt(path);
  if (entry === undefined) return requireFolder(path);
  if (await isSource(path, sources))
    throw refusal(path, 'is one of the sources, and a source is never overwritten', 'Choose another name.');
  if (entry.isDirectory()) throw refusal(path, 'is a folder, not a file', 'Name a file in it.');
  if (entry.isSymbolicLink()) throw refusal(path, 'is a link', 'Name the file itself.');
  if (!entry.isFile()) throw refusal(path, 'is a device or a pipe, not a file', 'Name a file.');
  if (!force) throw refusal(path, 'already exists', 'Use --force to replace it, or choose another name.');
  return requireFolder(path);
}

/** Codes by which a disk says that it does not know what is asked: most memory cards know no hard links. */
const unsupported = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EINVAL', 'UNKNOWN']);

/** For a refinement a disk may lack: true when done, false when it cannot be. Other errors are thrown on. */
async function whereSupported(step: Promise<void>): Promise<boolean> {
  try {
    await step;
    return true;
  } catch (error) {
    if (unsupported.has(systemCode(error) ?? '')) return false;
    throw error;
  }
}

/** Writes a file that must be new, through to the disk; the caller releases it. */
async function writeNew(path: string, data: FileData): Promise<void> {
  const handle = await makeTemporary(path, () => open(path, 'wx'));
  try {
    await handle.writeFile(data);
    await whereSupported(handle.sync());
  } finally {
    await handle.close();
  }
}

/** As {@link writeNew}, for what writes into a file by its name. */
async function fillNew(path: string, fill: () => Promise<void>): Promise<void> {
  await (await makeTemporary(path, () => open(path, 'wx'))).close();
  await fill();
  const handle = await open(path, 'r+');
  await whereSupported(handle.sync()).finally(() => handle.close());
}

/**
 * Gives the temporary file its name only if nothing has that name by now. A hard link does this in one step; without
 * links an empty file claims the name first, which never overwrites either.
 */
async function claimName(temporary: string, target: string): Promise<void> {
  if (await whereSupported(link(temporary, target))) return;
  const claim = await makeTemporary(target, () => open(target, 'wx'));
  try {
    await claim.close();
    await rename(temporary, target);
  } catch (failure) {
    await unlink(target);
    throw failure;
  } finally {
    releaseTemporary(target);
  }
}

/** Makes the new name itself last through a power cut, where the system can. */
async function syncFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // Some systems cannot open folders; the file itself is on the disk already.
  }
}

function writeProblem(path: string, error: unknown): InputError {
  const code = systemCode(error);
  if (code === 'EEXIST')
    return refusal(path, 'already exists', 'Use --force to replace it, or choose another name.');
  if (code === 'ENOENT') return noFolder(path);
  const problem = fileProblem(path, error);
  return new InputError({ ...problem, what: `cannot be written: ${problem.what}` });
}

/**
 * Lets `write` make a file whole or not at all: beside its place first, then under its name. An existing file is replaced
 * only with `force`, a source never, and a file that appears meanwhile is not overwritten without `force`. When anything
 * fails, or the process is interrupted, nothing is left behind.
 * @param path the file as the user named it
 * @param write makes the file whose path it is given, which is not there yet
 * @throws InputError naming the file and what to do, and whatever `write` throws
 */
export async function writeBeside(
  path: string,
  options: WriteOptions,
  write: (temporary: string) => Promise<void>,
): Promise<void> {
  if (basename(path) === '' || path.endsWith('/') || path.endsWith(sep))
    throw refusal(path, 'names no file', 'Give the file a name.');
  await checkTarget(path, options);
  const target = resolve(path);
  const temporary = join(dirname(target), `.gatelight-${randomBytes(9).toString('hex')}.part`);
  // Held from now on: another program may be the one that makes it.
  holdTemporary(temporary);
  try {
    await write(temporary);
    await (options.force ? rename(temporary, target) : claimName(temporary, target));
  } catch (error) {
    throw error instanceof InputError ? error : writeProblem(path, error);
  } finally {
    // Renamed already, or linked under its name, or failed: in each case the temporary name goes.
    await unlink(temporary).catch(() => undefined);
    releaseTemporary(temporary);
  }
  await syncFolder(dirname(target));
}

/**
 * Writes data as {@link writeBeside} does.
 * @param data bytes, or text to be written as UTF-8
 */
export async function writeSafely(path: string, data: FileData, options: WriteOptions): Promise<void> {
  await writeBeside(path, options, (temporary) => writeNew(temporary, data));
}

/**
 * As {@link writeBeside}, through to the disk.
 * @param fill writes into the file whose path it is given, which is there and empty
 */
export async function fillSafely(
  path: string,
  options: WriteOptions,
  fill: (temporary: string) => Promise<void>,
): Promise<void> {
  await writeBeside(path, options, (temporary) => fillNew(temporary, () => fill(temporary)));
}

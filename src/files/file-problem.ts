// The disk: reading within bounds, writing whole or not at all. Knows files, folders and what can be wrong with them;
// not what is in a file.

import type { Problem } from '../errors/input-error.js';

/** What went wrong with a file and what to do, by the system's error code. */
const reasons: Readonly<Record<string, { what: string; hint?: string }>> = {
  ENOENT: { what: 'no such file or folder', hint: 'Check the name and the folder it is in.' },
  ENOTDIR: { what: 'a part of the path is a file, not a folder', hint: 'Check the path.' },
  EISDIR: { what: 'is a folder, not a file', hint: 'Name a file in it.' },
  EACCES: { what: 'permission denied', hint: 'Change the permissions, or use another folder.' },
  EPERM: { what: 'the system does not permit it', hint: 'Change the permissions, or use another folder.' },
  EROFS: { what: 'the disk is read-only', hint: 'Write to another disk, or unlock the card.' },
  ENOSPC: { what: 'the disk is full', hint: 'Free some space, or write to another disk.' },
  EDQUOT: { what: 'the quota of disk space is used up', hint: 'Free some space, or write to another disk.' },
  EFBIG: { what: 'is larger than this disk or account can hold', hint: 'Write to another disk.' },
  ENAMETOOLONG: { what: 'the name is too long for this disk', hint: 'Use a shorter one.' },
  ELOOP: { what: 'its links lead round in a circle', hint: 'Name the file itself.' },
  EMFILE: { what: 'too many files are open', hint: 'Close other programs and try again.' },
  ENFILE: { what: 'too many files are open', hint: 'Close other programs and try again.' },
  EBUSY: { what: 'is in use by another program', hint: 'Close it there and try again.' },
  EIO: { what: 'the disk reports an error', hint: 'Check the disk, its cable or the card.' },
  EINVAL: { what: 'this disk does not allow such a name', hint: 'Use another one.' },
};

/** Node decodes names as UTF-8; one that is not is no longer the file's own, and nothing is found under it. */
const unreadableName = { what: 'no such file', hint: 'If its name is not in UTF-8, rename it.' };

/** The system's code of an error thrown by Node's file functions: ENOENT, EACCES, ...; undefined for any other. */
export function systemCode(error: unknown): string | undefined {
  const code = (error as { code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : undefined;
}

/**
 * The problem behind an error of Node's file functions.
 * @param path the file as the user named it
 * @throws the error itself where it is not the system's: then it is a bug of ours
 */
export function fileProblem(path: string, error: unknown): Problem {
  const code = systemCode(error);
  if (code === undefined || code.startsWith('ERR_')) {
    if (code === 'ERR_INVALID_ARG_VALUE') return { file: path, what: 'is not a name a file can have' };
    throw error;
  }
  if (code === 'ENOENT' && path.includes('\uFFFD')) return { file: path, ...unreadableName };
  const { what, hint } = reasons[code] ?? { what: `the system refuses it (${code})` };
  return { file: path, what, hint };
}

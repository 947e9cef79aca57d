import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import { InputError } from '../errors/input-error.js';
import { fileProblem } from './file-problem.js';

/** Bytes read at a time. */
const chunkBytes = 65536;

/** A size in words: 512 bytes, 8 kB, 120 MB (powers of 1000, as disks are sold). */
export function sizeInWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < 1_000_000) return `${Math.round(bytes / 1000)} kB`;
  return `${Math.round(bytes / 1_000_000)} MB`;
}

async function openFile(path: string): Promise<FileHandle> {
  // Not blocking: opening a pipe that nobody writes to would wait for ever.
  const handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  const about = await handle.stat();
  if (about.isFile()) return handle;
  await handle.close();
  if (about.isDirectory())
    throw new InputError({ file: path, what: 'is a folder, not a file', hint: 'Name a file in it.' });
  throw new InputError({
    file: path,
    what: 'is a device or a pipe, not a file',
    hint: 'Save it as a file first.',
  });
}

export interface StreamOptions {
  /** The most bytes the file may have. */
  readonly maxBytes?: number;
}

/**
 * Hands a file's bytes to `onChunk`, piece by piece, so that a large file need not fit into memory. A piece is valid
 * during the call only. What `onChunk` throws ends the reading and is thrown on.
 * @returns the number of bytes read, 0 for an empty file
 * @throws InputError for a file that is missing, a folder, a device, a pipe, unreadable or larger than allowed
 */
export async function streamFile(
  path: string,
  onChunk: (bytes: Uint8Array) => void,
  { maxBytes = Infinity }: StreamOptions = {},
): Promise<number> {
  const handle = await openFile(path).catch((error: unknown) => {
    throw error instanceof InputError ? error : new InputError(fileProblem(path, error));
  });
  try {
    const buffer = new Uint8Array(chunkBytes);
    let total = 0;
    for (;;) {
      const bytesRead = await readInto(handle, buffer, path);
      if (bytesRead === 0) return total;
      total += bytesRead;
      if (total > maxBytes) throw tooLarge(path, maxBytes);
      onChunk(buffer.subarray(0, bytesRead));
    }
  } finally {
    await handle.close();
  }
}

async function readInto(handle: FileHandle, buffer: Uint8Array, path: string): Promise<number> {
  try {
    return (await handle.read(buffer, 0, buffer.length)).bytesRead;
  } catch (error) {
    throw new InputError(fileProblem(path, error));
  }
}

function tooLarge(path: string, maxBytes: number): InputError {
  return new InputError({
    file: path,
    what: 'is too large',
    allowed: `${sizeInWords(maxBytes)} at most`,
    hint: 'Is it the right file?',
  });
}

/**
 * A file's bytes.
 * @throws InputError as streamFile, and for an empty file unless `emptyAllowed`
 */
export async function readBytesBounded(
  path: string,
  maxBytes: number,
  { emptyAllowed = false }: { readonly emptyAllowed?: boolean } = {},
): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  const total = await streamFile(path, (bytes) => chunks.push(bytes.slice()), { maxBytes });
  if (total === 0 && !emptyAllowed)
    throw new InputError({
      file: path,
      what: 'is empty',
      hint: 'Is it the right file? Was it saved to the end?',
    });
  return Buffer.concat(chunks);
}

/**
 * A text file, UTF-8, a byte order mark left out.
 * @throws InputError as readBytesBounded, and for bytes that are not UTF-8
 */
export async function readTextBounded(
  path: string,
  maxBytes: number,
  options: { readonly emptyAllowed?: boolean } = {},
): Promise<string> {
  const bytes = await readBytesBounded(path, maxBytes, options);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputError({ file: path, what: 'is not text in UTF-8', hint: 'Save it as UTF-8 text.' });
  }
}

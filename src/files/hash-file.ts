import { createHash } from 'node:crypto';
import { streamFile } from './read-bounded.js';

/** SHA-256 of a file's bytes, as 64 hexadecimal digits. @throws InputError as streamFile */
export async function hashFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  await streamFile(path, (bytes) => hash.update(bytes));
  return hash.digest('hex');
}

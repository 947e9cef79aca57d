import type { BigIntStats } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';

/** A file's own number with its disk's, or undefined where the disk numbers no files. */
const numberOf = ({ ino, dev }: BigIntStats): string | undefined =>
  ino === 0n ? undefined : `${dev} ${ino}`;

/** By what a file can be told, whatever it is called: its own number, and the path with all links resolved. */
async function identities(path: string): Promise<string[]> {
  try {
    const number = numberOf(await stat(path, { bigint: true }));
    return [await realpath(path), ...(number === undefined ? [] : [number])];
  } catch {
    return []; // what is not there, or a link to nothing, cannot be overwritten
  }
}

/** The identities of each list of sources that was asked about: a reel's frames are all held against the same thousands. */
const known = new WeakMap<readonly string[], Promise<ReadonlySet<string>>>();

async function gather(sources: readonly string[]): Promise<ReadonlySet<string>> {
  const all = new Set<string>();
  for (const source of sources) for (const identity of await identities(source)) all.add(identity);
  return all;
}

/** Whether a file is one of the sources, by whatever name. */
export async function isSource(path: string, sources: readonly string[]): Promise<boolean> {
  const ofSources = known.get(sources) ?? gather(sources);
  known.set(sources, ofSources);
  const own = await identities(path);
  const all = await ofSources;
  return own.some((identity) => all.has(identity));
}

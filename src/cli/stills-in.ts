import { readdir, stat } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { InputError } from '../errors/input-error.js';
import { frameNamed } from '../clips/clip-name.js';
import { fileProblem } from '../files/file-problem.js';

const stillName = /\.(png|jpe?g|tiff?)$/i;

async function isFolder(path: string): Promise<boolean> {
  if ((await frameNamed(path)) !== undefined) return false;
  try {
    return (await stat(path)).isDirectory();
  } catch (error) {
    throw new InputError(fileProblem(path, error));
  }
}

/** The stills of a folder, by name, hidden files left out. */
async function stillsOfFolder(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new InputError(fileProblem(folder, error));
  });
  const stills = names.filter((name) => stillName.test(name) && !name.startsWith('.')).sort();
  if (stills.length === 0)
    throw new InputError({ file: folder, what: 'holds no stills', allowed: 'PNG, JPEG and TIFF' });
  return stills.map((name) => join(folder, name));
}

/** Files as given, folders as the stills in them. @throws InputError for what is missing, and for two stills of one name */
export async function stillsIn(paths: readonly string[]): Promise<string[]> {
  const lists: string[][] = [];
  for (const path of paths) lists.push((await isFolder(path)) ? await stillsOfFolder(path) : [path]);
  const stills = lists.flat();
  const names = new Map<string, string>();
  for (const still of stills) {
    const other = names.get(basename(still));
    if (other !== undefined)
      throw new InputError({
        file: still,
        what: `has the same name as ${other}`,
        hint: 'Write them to two folders.',
      });
    names.set(basename(still), still);
  }
  return stills;
}

/** Whether `output` is a folder: it is one already, or its name has no extension. */
export async function namesFolder(output: string): Promise<boolean> {
  const entry = await stat(output).catch(() => undefined);
  return entry === undefined ? output.endsWith('/') || extname(output) === '' : entry.isDirectory();
}

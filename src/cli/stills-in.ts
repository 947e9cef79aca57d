import { readdir, stat } from 'node:fs/promises';
import { basename, extname, isAbsolute, join } from 'node:path';
import { frameNamed } from '../clips/clip-name.js';
import { InputError } from '../errors/input-error.js';
import { fileProblem, systemCode } from '../files/file-problem.js';

const stillName = /\.(png|jpe?g|tiff?)$/i;

const stillKinds = 'PNG, JPEG and TIFF';

const byNumber = new Intl.Collator('en', { numeric: true });

/** The order of numbered frames: f9 before f10; the same on every machine. */
const inOrder = (a: string, b: string): number => byNumber.compare(a, b) || (a < b ? -1 : 1);

/** The stills of a folder in order, hidden files left out. */
async function stillsOfFolder(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new InputError(fileProblem(folder, error));
  });
  const stills = names.filter((name) => stillName.test(name) && !name.startsWith('.')).sort(inOrder);
  if (stills.length === 0)
    throw new InputError({ file: folder, what: 'holds no stills', allowed: stillKinds });
  return stills.map((name) => join(folder, name));
}

/** The stills that a pattern names in order, where no shell has expanded it; undefined for a plain name. */
async function stillsOfPattern(pattern: string): Promise<string[] | undefined> {
  const { glob, isDynamicPattern } = await import('tinyglobby');
  if (!isDynamicPattern(pattern)) return undefined;
  const files = await glob(pattern, { expandDirectories: false, absolute: isAbsolute(pattern) });
  const stills = files.filter((name) => stillName.test(name)).sort(inOrder);
  if (stills.length === 0)
    throw new InputError({ file: pattern, what: 'names no stills', allowed: stillKinds });
  return stills;
}

/** A file or a movie's frame as given, a folder as its stills, a pattern as what it names; a file of just that name goes first. */
async function stillsOf(path: string): Promise<string[]> {
  if ((await frameNamed(path)) !== undefined) return [path];
  try {
    return (await stat(path)).isDirectory() ? await stillsOfFolder(path) : [path];
  } catch (error) {
    if (error instanceof InputError) throw error;
    const named = systemCode(error) === 'ENOENT' ? await stillsOfPattern(path) : undefined;
    if (named !== undefined) return named;
    throw new InputError(fileProblem(path, error));
  }
}

/**
 * Files as given; folders and patterns (`reel/*.tif`) as the stills in them, numbers in order.
 * @throws InputError for what is missing, and for two stills of one name
 */
export async function stillsIn(paths: readonly string[]): Promise<string[]> {
  const lists: string[][] = [];
  for (const path of paths) lists.push(await stillsOf(path));
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

import { readdir, stat } from 'node:fs/promises';
import { basename, extname, isAbsolute, join } from 'node:path';
import { fileStem, frameNamed, namesMovie, parseFrameName } from '../clips/clip-name.js';
import { InputError } from '../errors/input-error.js';
import { fileProblem, systemCode } from '../files/file-problem.js';
import { namesStill } from './kind-of-name.js';

const stillKinds = 'PNG, JPEG and TIFF';

const byNumber = new Intl.Collator('en', { numeric: true });

/** The order of numbered frames: f9 before f10; the same on every machine. */
const inOrder = (a: string, b: string): number => byNumber.compare(a, b) || (a < b ? -1 : 1);

/** The stills of a folder in order, hidden files left out. */
async function stillsOfFolder(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new InputError(fileProblem(folder, error));
  });
  const stills = names.filter((name) => namesStill(name) && !name.startsWith('.')).sort(inOrder);
  if (stills.length === 0)
    throw new InputError({ file: folder, what: 'holds no stills', allowed: stillKinds });
  return stills.map((name) => join(folder, name));
}

/** The stills that a pattern names in order, where no shell has expanded it; undefined for a plain name. */
async function stillsOfPattern(pattern: string): Promise<string[] | undefined> {
  const { glob, isDynamicPattern } = await import('tinyglobby');
  if (!isDynamicPattern(pattern)) return undefined;
  const files = await glob(pattern, { expandDirectories: false, absolute: isAbsolute(pattern) });
  const stills = files.filter((name) => namesStill(name)).sort(inOrder);
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

/** What a still is called in the folder that it is written to: as it was; a frame of a movie becomes a PNG of 16 bits. */
export const nameInFolder = (still: string): string =>
  parseFrameName(still) === undefined ? basename(still) : `${fileStem(still)}.png`;

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
    const name = nameInFolder(still);
    const other = names.get(name);
    if (other !== undefined)
      throw new InputError({
        file: still,
        what: other === still ? 'is given twice' : `would be written as ${name}, and so would ${other}`,
        hint: other === still ? 'Name it once.' : 'Write them to two folders.',
      });
    names.set(name, still);
  }
  return stills;
}

/**
 * Whether stills go into a folder: it is there already, its name has no extension, or they are many.
 * @throws InputError for many where one file is named
 */
export async function goIntoFolder(stills: readonly string[], output: string): Promise<boolean> {
  const entry = await stat(output).catch(() => undefined);
  const isFolder = entry === undefined ? output.endsWith('/') || extname(output) === '' : entry.isDirectory();
  if (!isFolder && stills.length > 1 && (entry !== undefined || namesStill(output) || namesMovie(output)))
    throw new InputError({
      file: output,
      what: `is ${entry === undefined ? 'the name of one file' : 'a file'}, and ${stills.length} stills are to be written`,
      hint: 'Name a folder with -o.',
    });
  return isFolder || stills.length > 1;
}

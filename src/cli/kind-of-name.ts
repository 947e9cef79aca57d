import { extname } from 'node:path';
import { frameNamed, namesMovie, parseFrameName } from '../clips/clip-name.js';
import { InputError } from '../errors/input-error.js';
import { lutFormats } from '../lut/formats/index.js';
import { shellWord } from './shell-word.js';

const stillName = /\.(png|jpe?g|tiff?)$/i;
const lutName = (path: string) =>
  Object.values(lutFormats).some(({ extension }) => extname(path).toLowerCase() === extension);

/** Whether a name looks like a still's. */
export const namesStill = (path: string): boolean => stillName.test(path);

/** Whether a name is a look file's. */
export const namesLook = (path: string): boolean => extname(path).toLowerCase() === '.json';

/** What a file is by its name, in words; undefined where its name does not say. */
function kindOfName(path: string): 'a still' | 'a movie' | 'a look file' | 'a LUT' | undefined {
  if (namesLook(path)) return 'a look file';
  if (namesStill(path) || parseFrameName(path) !== undefined) return 'a still';
  if (namesMovie(path)) return 'a movie';
  return lutName(path) ? 'a LUT' : undefined;
}

const otherOrder = 'Was another order meant? --help shows it.';

/** @throws InputError for a name of something else where a look file is wanted */
export function requireLookName(path: string): void {
  const kind = kindOfName(path);
  if (kind !== undefined && kind !== 'a look file')
    throw new InputError({ file: path, what: `is ${kind}, and a look file (.json) is wanted` });
}

/** @throws InputError for a name of something else where a LUT is wanted, as far as it says what it is */
export function requireLutName(path: string): void {
  const kind = kindOfName(path);
  if (kind === undefined || kind === 'a LUT') return;
  throw new InputError({
    file: path,
    what: `is ${kind}, and a LUT (.cube, .clf) is wanted`,
    ...(kind === 'a look file' ? { hint: `gatelight build ${shellWord(path)} makes one.` } : {}),
  });
}

/** @throws InputError for any other name where a look or a LUT is wanted: the words were given in another order */
export function requireSourceName(path: string): void {
  const kind = kindOfName(path);
  if (kind === 'a look file' || kind === 'a LUT') return;
  const wanted = 'a look (.json) or a LUT (.cube, .clf)';
  const what =
    kind === undefined ? `is not the name of ${wanted}` : `is ${kind}, and ${wanted} is wanted in its place`;
  throw new InputError({ file: path, what, hint: otherOrder });
}

/** @throws InputError for a look or a LUT where a still is wanted */
export function requireStillName(path: string): void {
  const kind = kindOfName(path);
  if (kind === 'a look file' || kind === 'a LUT')
    throw new InputError({
      file: path,
      what: `is ${kind}, and a still is wanted in its place`,
      hint: otherOrder,
    });
}

/** @throws InputError for a still where a whole movie is wanted, one of its frames too */
export async function requireMovieName(path: string): Promise<void> {
  const frame = namesMovie(path) ? undefined : await frameNamed(path);
  if (frame === undefined && !namesStill(path)) return;
  throw new InputError({
    file: path,
    what: 'is one frame, and a whole movie is wanted',
    ...(frame === undefined ? {} : { hint: `Name ${frame.clip}.` }),
  });
}

/**
 * @param options of a command, as they were given
 * @param names files that it was given
 * @throws InputError for what overrules a movie's tags where no file can be a movie: it would be passed over in silence
 */
export function requireMovieAmong(
  { matrix, range }: { readonly matrix?: unknown; readonly range?: unknown },
  names: readonly string[],
): void {
  if (matrix === undefined && range === undefined) return;
  if (names.some((name) => !namesStill(name) && !namesLook(name) && !lutName(name))) return;
  throw new InputError({
    field: matrix === undefined ? '--range' : '--matrix',
    what: 'is for movie files, and none was given',
    hint: 'Leave it out: code values of a still are taken as they are.',
  });
}

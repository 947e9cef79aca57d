// Movie files, by way of ffmpeg and ffprobe as child processes, never through a shell. Knows containers, streams, pixel
// formats and frames; nothing of looks, reels or what a frame shows.

import { access, constants, stat } from 'node:fs/promises';
import { basename, delimiter, dirname, join, resolve } from 'node:path';
import { InputError } from '../errors/input-error.js';

/** Environment variables that name the two programs where they are not on PATH, or not the ones that are wanted. */
export const toolVariables = { ffmpeg: 'GATELIGHT_FFMPEG', ffprobe: 'GATELIGHT_FFPROBE' } as const;

export interface Tools {
  readonly ffmpeg: string;
  readonly ffprobe: string;
}

type Environment = Readonly<Record<string, string | undefined>>;

async function isProgram(path: string): Promise<boolean> {
  try {
    await access(path, constants.X_OK);
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}

/** The first of the files that can be run. */
async function firstProgram(paths: readonly string[]): Promise<string | undefined> {
  for (const path of paths) if (await isProgram(path)) return path;
  return undefined;
}

const endings = process.platform === 'win32' ? ['.exe', ''] : [''];

function onPath(name: string, environment: Environment): string[] {
  const folders = (environment.PATH ?? environment.Path ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '');
  return folders.flatMap((folder) => endings.map((ending) => join(folder, `${name}${ending}`)));
}

const howToInstall: Readonly<Partial<Record<NodeJS.Platform, string>>> = {
  linux: 'Install it (Debian and its kin: apt install ffmpeg)',
  darwin: 'Install it (brew install ffmpeg)',
  win32: 'Install it (winget install ffmpeg)',
};

function missing(name: keyof Tools): InputError {
  return new InputError({
    what: `clips need ${name}, and it was not found`,
    hint: `${howToInstall[process.platform] ?? 'Install ffmpeg'}, or name the program in ${toolVariables[name]}. Stills need neither.`,
  });
}

/** The program that a variable names. @throws InputError when that is no program */
async function namedProgram(name: keyof Tools, environment: Environment): Promise<string | undefined> {
  const variable = toolVariables[name];
  const given = environment[variable];
  if (given === undefined || given === '') return undefined;
  if (await isProgram(given)) return resolve(given);
  throw new InputError({
    field: variable,
    what: `"${given}" is not a program that can be run`,
    hint: `Set it to the full path of ${name}, or unset it.`,
  });
}

/**
 * Finds ffmpeg (GATELIGHT_FFMPEG, else PATH) and ffprobe (GATELIGHT_FFPROBE, else beside ffmpeg, else PATH).
 * @throws InputError saying in one line what is missing and how to install it
 */
export async function findTools(environment: Environment = process.env): Promise<Tools> {
  const ffmpeg =
    (await namedProgram('ffmpeg', environment)) ?? (await firstProgram(onPath('ffmpeg', environment)));
  if (ffmpeg === undefined) throw missing('ffmpeg');
  const beside = join(dirname(ffmpeg), basename(ffmpeg).replace('ffmpeg', 'ffprobe'));
  const ffprobe =
    (await namedProgram('ffprobe', environment)) ??
    (await firstProgram([...(beside === ffmpeg ? [] : [beside]), ...onPath('ffprobe', environment)]));
  if (ffprobe === undefined) throw missing('ffprobe');
  return { ffmpeg, ffprobe };
}

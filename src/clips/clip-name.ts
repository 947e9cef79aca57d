import { stat } from 'node:fs/promises';
import { basename, extname } from 'node:path';
import { InputError } from '../errors/input-error.js';

/** A frame of a clip: by number, counted from 0, or the one shown at a time, seconds from the clip's beginning. */
export type FramePlace = { readonly frame: number } | { readonly seconds: number };

export interface FrameName {
  readonly clip: string;
  readonly place: FramePlace;
}

const form = /^(.+)@(?:f(\d{1,9})|((?:\d{1,4}:){0,2}\d{1,6}(?:\.\d{1,9})?))$/s;

/** Seconds of `1:02:03.5`, `1:20.5` or `80.5`. */
const secondsOf = (time: string): number =>
  time.split(':').reduce((total, part) => 60 * total + Number(part), 0);

/** A name that ends like a frame of a clip, taken apart; undefined for any other. */
export function parseFrameName(name: string): FrameName | undefined {
  const parts = form.exec(name);
  if (parts === null) return undefined;
  const [, clip, frame, time] = parts;
  return { clip, place: frame === undefined ? { seconds: secondsOf(time) } : { frame: Number(frame) } };
}

/** The name that {@link parseFrameName} takes apart again. */
export const frameName = (clip: string, frame: number): string => `${clip}@f${frame}`;

/**
 * What a file made of a still or of a clip's frame is called, without folder and extension: `reel-f002050` of
 * `day/reel.mkv@f2050`, `reel-1-20.5` of `reel.mkv@1:20.5`, so that files of frames lie in their order.
 */
export function fileStem(name: string): string {
  const [, clip, frame, time] = form.exec(name) ?? [];
  if (clip === undefined) return basename(name, extname(name));
  const place = frame === undefined ? time.replaceAll(':', '-') : `f${frame.padStart(6, '0')}`;
  return `${basename(clip, extname(clip))}-${place}`;
}

const movieName = /\.(mkv|mov|mp4|m4v|avi|mxf|mts|m2ts|ts|webm|mpg|mpeg|wmv|dv|nut|y4m|ogv|3gp|flv|vob)$/i;

/** Whether a name looks like a movie file's. */
export const namesMovie = (name: string): boolean => movieName.test(name);

/** What may be meant as a place, well or badly. */
const placeForm = /^(.+)@([^@/\\]*)$/s;

async function isFile(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}

/**
 * The frame that a name means, or undefined where it names a file as it stands: a file whose name really ends so comes
 * first, and `@` in the rest of a name means nothing.
 * @throws InputError for a movie without a frame, or with something else after the @
 */
export async function frameNamed(name: string): Promise<FrameName | undefined> {
  const parsed = parseFrameName(name);
  if (parsed !== undefined && !(await isFile(name))) return parsed;
  const [, movie, place] = placeForm.exec(name) ?? [];
  if (parsed === undefined && namesMovie(movie ?? '') && !(await isFile(name)))
    throw new InputError({
      file: movie,
      what: `"@${place}" is no place in a movie`,
      allowed: `a time or the number of a frame: ${movie}@1:20.5 or ${frameName(movie, 250)}`,
    });
  if (parsed === undefined && namesMovie(name))
    throw new InputError({
      file: name,
      what: 'is a movie, and one frame of it is wanted',
      hint: `Name the frame by time or number: ${name}@1:20.5 or ${frameName(name, 250)}`,
    });
  return undefined;
}

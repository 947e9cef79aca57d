import { namesMovie } from '../../../clips/clip-name.js';
import { InputError } from '../../../errors/input-error.js';
import type { ClipOptions } from '../../options.js';

/** How many stills are picked from a movie when nothing is said. */
export const usualStills = 8;

export interface ChosenStillsOptions extends ClipOptions {
  readonly stills?: number;
  readonly keep?: string;
  readonly force: boolean;
}

/** The stills that are measured: as given, or picked from the one movie that is given. */
export async function chosenStills(
  given: readonly string[],
  options: ChosenStillsOptions,
): Promise<readonly string[]> {
  const movie = given.find((name) => namesMovie(name));
  if (movie === undefined) {
    if (options.stills === undefined && options.keep === undefined) return given;
    throw new InputError({
      field: options.stills === undefined ? '--keep' : '--stills',
      what: 'is for one movie file, and none was given',
      hint: `gatelight measure reel.mkv --stills ${usualStills}`,
    });
  }
  if (given.length > 1)
    throw new InputError({
      file: movie,
      what: 'is a movie, and is measured in a run of its own',
      hint: 'Name it alone, or frames of it among the stills.',
    });
  const { keepStills, stillsOfClip } = await import('./stills-of-clip.js');
  const stills = await stillsOfClip(movie, options.stills ?? usualStills, options);
  if (options.keep !== undefined) await keepStills(stills, options.keep, options);
  return stills;
}

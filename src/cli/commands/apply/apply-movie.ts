import { frameName, namesMovie } from '../../../clips/clip-name.js';
import { InputError } from '../../../errors/input-error.js';
import type { Flip } from '../../../picture/orientation.js';
import { loadEngine } from '../../engine/load-engine.js';
import { openSource } from '../../load.js';
import type { ClipOptions } from '../../options.js';
import { printable, terminal } from '../../report.js';

export interface MovieOptions extends ClipOptions {
  readonly output: string;
  readonly encoder?: string;
  readonly encoderOptions?: string;
  readonly flip?: Flip;
  readonly force: boolean;
}

/** The movie that is to be done whole, if one is given. @throws InputError for one among others */
export function movieAmong(paths: readonly string[]): string | undefined {
  const movie = paths.find((path) => namesMovie(path));
  if (movie === undefined || paths.length === 1) return movie;
  throw new InputError({
    file: movie,
    what: 'is a movie, and is done in a run of its own',
    hint: `Name a frame of it to have it among stills: ${frameName(movie, 250)}`,
  });
}

/** A whole movie through a look. */
export async function applyMovie(look: string, movie: string, options: MovieOptions): Promise<void> {
  const { applyClip, losslessEncoder } = await import('./apply-clip.js');
  const source = await openSource(look);
  const { output: path, encoder = losslessEncoder, encoderOptions } = options;
  const through = { ...options, source, engine: loadEngine(), sources: [look, movie] };
  const frames = await applyClip(movie, through, { path, encoder, encoderOptions });
  terminal.result(
    `${printable(path)}: ${frames === 1 ? '1 frame' : `${frames} frames`}, ${printable(source.name)}.`,
  );
}

import { availableParallelism } from 'node:os';
import { type Command, Option } from 'commander';
import { InputError } from '../../errors/input-error.js';
import type { Flip } from '../../picture/orientation.js';
import { loadEngine } from '../engine/load-engine.js';
import { requireMovieAmong } from '../kind-of-name.js';
import { openSource } from '../load.js';
import {
  type ClipOptions,
  flipOption,
  forceOption,
  matrixOption,
  rangeOption,
  wholeNumber,
} from '../options.js';
import { printable, terminal } from '../report.js';
import { goIntoFolder, stillsIn } from '../stills-in.js';
import { applyMovie, movieAmong } from './apply/apply-movie.js';
import { applyStill } from './apply/apply-still.js';
import { applyToFolder, type FolderOptions } from './apply/apply-to-folder.js';
import { readPart } from './apply/part.js';

interface Options extends ClipOptions, FolderOptions {
  readonly encoder?: string;
  readonly encoderOptions?: string;
  readonly flip?: Flip;
}

/** @throws InputError where what is asked makes sense for many frames only */
function requireOneStill({ resume, part }: Options): void {
  if (!resume && part === undefined) return;
  throw new InputError({
    what: `${resume ? '--resume' : '--part'} is for frames that go into a folder`,
    hint: 'Name a folder with -o.',
  });
}

/** @throws InputError where what is asked makes sense for a whole movie only */
function requireNoEncoder({ encoder, encoderOptions }: Options): void {
  if (encoder === undefined && encoderOptions === undefined) return;
  throw new InputError({
    field: encoder === undefined ? '--encoder-options' : '--encoder',
    what: 'is for a whole movie, and stills were given',
    hint: 'Leave it out: a still is written in the format that its name says.',
  });
}

export function addApply(program: Command): void {
  program
    .command('apply')
    .summary('write stills, a reel of frames or a whole movie through a look')
    .description(
      'Writes stills through a look: size, depth, alpha and profile kept; or a whole movie: every frame, sound, rate, time ' +
        'code. A folder stands for the stills in it, and so does a pattern in quotes; numbered frames are done in the order ' +
        'of their numbers.',
    )
    .argument('<look>', 'look file (.json) or LUT (.cube, .clf)')
    .argument(
      '<stills...>',
      'PNG, JPEG, TIFF; folders or patterns of them: "reel/*.tif"; frames of movies: reel.mkv@1:20.5; or one whole movie',
    )
    .requiredOption('-o, --output <path>', 'the file, or the folder for several')
    .option(
      '--jobs <n>',
      'stills worked on at once',
      wholeNumber('--jobs', 1, 64),
      Math.min(4, availableParallelism()),
    )
    .option('--part <k/n>', 'every n-th frame from the k-th: the share of one machine of n', readPart)
    .addOption(
      new Option(
        '--resume',
        'do the frames that are missing; finished ones stay, even if look or still have changed since',
      )
        .default(false)
        .conflicts('force'),
    )
    .addOption(flipOption())
    .addOption(matrixOption())
    .addOption(rangeOption())
    .addOption(forceOption())
    .option(
      '--encoder <name>',
      'of a movie: another encoder that this ffmpeg has; lossless FFV1 when left out',
    )
    .option('--encoder-options <text>', 'of a movie: options of that encoder, as "-crf 16 -preset slow"')
    .addHelpText(
      'after',
      '\nExamples:\n  gatelight apply warm.cube frames/ -o graded/\n' +
        '  gatelight apply warm.cube "reel/*.tif" -o graded/ --resume --part 3/10\n' +
        '  gatelight apply warm.cube reel.mkv -o graded.mkv\n',
    )
    .action(async (look: string, paths: string[], options: Options) => {
      const { output, flip, force, matrix, range } = options;
      const movie = movieAmong(paths);
      if (movie !== undefined) {
        requireOneStill(options);
        return applyMovie(look, movie, options);
      }
      requireNoEncoder(options);
      const stills = await stillsIn(paths);
      // What a folder holds is not told by its name.
      requireMovieAmong(options, stills);
      // First the decoder, which works on other threads: it can be at the stills while the look's table is worked out.
      await import('../../stills/read-still.js');
      const source = await openSource(look);
      const through = {
        source,
        engine: loadEngine(),
        flip,
        force,
        matrix,
        range,
        sources: [look, ...stills],
      };
      if (await goIntoFolder(stills, output)) return applyToFolder(look, stills, options, through);
      requireOneStill(options);
      await applyStill(stills[0], output, through);
      terminal.result(`${printable(output)}: ${printable(source.name)}.`);
    });
}

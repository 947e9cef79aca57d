import { availableParallelism } from 'node:os';
import { basename, join } from 'node:path';
import type { Command } from 'commander';
import { InputError } from '../../errors/input-error.js';
import { makeFolder } from '../../files/make-folder.js';
import { checkTarget, writeSafely } from '../../files/write-beside-then-rename.js';
import { applyLook } from '../../jobs/apply-look.js';
import { type Flip, flipPicture } from '../../picture/orientation.js';
import { exitCodes } from '../exit-codes.js';
import { loadSource, type Source } from '../load.js';
import { openStill } from '../open-still.js';
import { flipOption, forceOption, wholeNumber } from '../options.js';
import { noteAll, printable, tellProblems, terminal } from '../report.js';
import { namesFolder, stillsIn } from '../stills-in.js';

interface Options {
  readonly output: string;
  readonly jobs: number;
  readonly flip?: Flip;
  readonly force: boolean;
}

async function applyToFile(
  source: Source,
  still: string,
  output: string,
  sources: string[],
  options: Options,
) {
  const writing = { force: options.force, sources };
  await checkTarget(output, writing);
  const { encodeStill } = await import('../../stills/write-still.js');
  const { picture, notes, profile } = await openStill(still);
  noteAll(still, notes);
  const upright = options.flip === undefined ? picture : flipPicture(picture, options.flip);
  const encoded = await encodeStill(output, applyLook(source.lut, upright), profile);
  noteAll(output, encoded.notes);
  await writeSafely(output, encoded.bytes, writing);
}

/** Does `work` for every item, `jobs` at a time. */
async function inParallel<T>(
  items: readonly T[],
  jobs: number,
  work: (item: T) => Promise<void>,
): Promise<void> {
  const queue = items.values();
  const worker = async () => {
    for (const item of queue) await work(item);
  };
  await Promise.all(Array.from({ length: jobs }, worker));
}

/** Every still into the folder; one that cannot be done is told and the rest go on. @returns how many were done */
async function applyToFolder(
  source: Source,
  stills: string[],
  sources: string[],
  options: Options,
): Promise<number> {
  await makeFolder(options.output);
  let done = 0;
  await inParallel(stills, options.jobs, async (still) => {
    try {
      await applyToFile(source, still, join(options.output, basename(still)), sources, options);
      done++;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      tellProblems(error);
    }
  });
  return done;
}

export function addApply(program: Command): void {
  program
    .command('apply')
    .summary('write stills as they look through a look')
    .description(
      'Writes stills through a look: size, depth, alpha and profile kept. A folder stands for the stills in it.',
    )
    .argument('<look>', 'look file (.json) or LUT (.cube)')
    .argument('<stills...>', 'PNG, JPEG, TIFF, or folders of them')
    .requiredOption('-o, --output <path>', 'the file, or the folder for several')
    .option('--jobs <n>', 'stills worked on at once', wholeNumber(1, 64), Math.min(4, availableParallelism()))
    .addOption(flipOption())
    .addOption(forceOption())
    .addHelpText('after', '\nExample:\n  gatelight apply warm.cube frames/ -o graded/\n')
    .action(async (lookPath: string, paths: string[], options: Options) => {
      const stills = await stillsIn(paths);
      const source = await loadSource(lookPath);
      const sources = [lookPath, ...stills];
      if (stills.length === 1 && !(await namesFolder(options.output))) {
        await applyToFile(source, stills[0], options.output, sources, options);
        terminal.result(`${printable(options.output)}: ${printable(source.name)}.`);
        return;
      }
      const done = await applyToFolder(source, stills, sources, options);
      terminal.result(
        `${printable(options.output)}: ${done} of ${stills.length} stills, ${printable(source.name)}.`,
      );
      if (done < stills.length) process.exitCode = done === 0 ? exitCodes.unusable : exitCodes.notGood;
    });
}

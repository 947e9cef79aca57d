import { availableParallelism } from 'node:os';
import type { Command } from 'commander';
import type { Flip } from '../../picture/orientation.js';
import { loadEngine } from '../engine/load-engine.js';
import { exitCodes } from '../exit-codes.js';
import { loadSource } from '../load.js';
import {
  type ClipOptions,
  flipOption,
  forceOption,
  matrixOption,
  rangeOption,
  wholeNumber,
} from '../options.js';
import { printable, terminal } from '../report.js';
import { namesFolder, stillsIn } from '../stills-in.js';
import { applyFrames } from './apply/apply-frames.js';
import { applyStill } from './apply/apply-still.js';

interface Options extends ClipOptions {
  readonly output: string;
  readonly jobs: number;
  readonly flip?: Flip;
  readonly force: boolean;
}

export function addApply(program: Command): void {
  program
    .command('apply')
    .summary('write stills as they look through a look')
    .description(
      'Writes stills through a look: size, depth, alpha and profile kept. A folder stands for the stills in it.',
    )
    .argument('<look>', 'look file (.json) or LUT (.cube, .clf)')
    .argument('<stills...>', 'PNG, JPEG, TIFF, or folders of them, or frames of movies: reel.mkv@1:20.5')
    .requiredOption('-o, --output <path>', 'the file, or the folder for several')
    .option('--jobs <n>', 'stills worked on at once', wholeNumber(1, 64), Math.min(4, availableParallelism()))
    .addOption(flipOption())
    .addOption(matrixOption())
    .addOption(rangeOption())
    .addOption(forceOption())
    .addHelpText('after', '\nExample:\n  gatelight apply warm.cube frames/ -o graded/\n')
    .action(async (lookPath: string, paths: string[], options: Options) => {
      const { output, jobs, flip, force } = options;
      const stills = await stillsIn(paths);
      const source = await loadSource(lookPath);
      const { matrix, range } = options;
      const through = {
        matrix,
        range,
        source,
        engine: loadEngine(),
        flip,
        force,
        sources: [lookPath, ...stills],
      };
      if (stills.length === 1 && !(await namesFolder(output))) {
        await applyStill(stills[0], output, through);
        terminal.result(`${printable(output)}: ${printable(source.name)}.`);
        return;
      }
      const done = await applyFrames(stills, output, jobs, through);
      terminal.result(`${printable(output)}: ${done} of ${stills.length} stills, ${printable(source.name)}.`);
      if (done < stills.length) process.exitCode = done === 0 ? exitCodes.unusable : exitCodes.notGood;
    });
}

import { basename } from 'node:path';
import type { Command } from 'commander';
import { checkTarget, writeSafely } from '../../files/write-beside-then-rename.js';
import { buildLook } from '../../jobs/build-look.js';
import { lutFormatOf } from '../../lut/formats/index.js';
import { limits } from '../../lut/formats/limits.js';
import { loadLook } from '../load.js';
import { maker } from '../maker.js';
import { forceOption, wholeNumber } from '../options.js';
import { printable, terminal } from '../report.js';

interface Options {
  readonly output?: string;
  readonly size: number;
  readonly title?: string;
  readonly plain: boolean;
  readonly force: boolean;
}

const { least, most } = limits.latticeSize;

export function addBuild(program: Command): void {
  program
    .command('build')
    .summary('make a .cube file of a look')
    .description(
      'Makes a 3D LUT (.cube) of a look file. The same look and version always give the same bytes.',
    )
    .argument('<look>', 'look file (JSON)')
    .option('-o, --output <file>', 'the .cube file; the look file’s name in this folder when left out')
    .option('--size <n>', 'nodes a side; devices usually load 17, 33 or 65', wholeNumber(least, most), 33)
    .option('--title <text>', 'title in the file; the look’s name when left out')
    .option('--plain', 'nothing but size and rows, for devices that stumble over more', false)
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight build looks/warm-stock-and-lamp.json -o warm.cube --size 33\n',
    )
    .action(async (lookPath: string, options: Options) => {
      const output = options.output ?? `${basename(lookPath).replace(/\.json$/i, '')}.cube`;
      const writing = { force: options.force, sources: [lookPath] };
      const look = await loadLook(lookPath);
      await checkTarget(output, writing);
      lutFormatOf(output);
      const { text } = buildLook(look, options, maker);
      await writeSafely(output, text, writing);
      terminal.result(
        `${printable(output)}: ${printable(look.name)}, ${options.size} points, ${text.length} bytes.`,
      );
    });
}

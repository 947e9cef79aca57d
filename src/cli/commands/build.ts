import { basename } from 'node:path';
import type { Command } from 'commander';
import { checkTarget, writeSafely } from '../../files/write-beside-then-rename.js';
import { buildCurves, usualCurveSize } from '../../jobs/build-curves.js';
import { buildLook } from '../../jobs/build-look.js';
import { lutFormatOf } from '../../lut/formats/index.js';
import { counted } from '../../lut/checks/finding.js';
import { limits } from '../../lut/formats/limits.js';
import { loadLook } from '../load.js';
import { maker } from '../maker.js';
import { forceOption, wholeNumber } from '../options.js';
import { printable, terminal } from '../report.js';
import { shareLine } from '../share-line.js';
import { noteTitle } from '../title-note.js';

interface Options {
  readonly output?: string;
  readonly size?: string;
  readonly curves: boolean;
  readonly title?: string;
  readonly plain: boolean;
  readonly force: boolean;
}

/** Nodes a side when nothing is asked: what most devices load (common practice, no source). */
const usualLatticeSize = 33;

/** Points that are asked for: more of a curve than of a table. */
function sizeOf({ curves, size }: Options): number {
  if (size === undefined) return curves ? usualCurveSize : usualLatticeSize;
  const { least, most } = curves ? limits.curveSize : limits.latticeSize;
  return wholeNumber('--size', least, most)(size);
}

export function addBuild(program: Command): void {
  program
    .command('build')
    .summary('make a LUT file of a look')
    .description(
      'Makes a 3D LUT (.cube, or .clf: Common LUT Format) of a look file. The same look and version always give the ' +
        'same bytes.',
    )
    .argument('<look>', 'look file (JSON)')
    .option(
      '-o, --output <file>',
      'the .cube or .clf file; the look file’s name in this folder when left out',
    )
    .option(
      '--size <n>',
      `nodes a side; devices usually load 17, 33 or 65 (default: ${usualLatticeSize}; entries with --curves: ${usualCurveSize})`,
    )
    .option('--curves', 'a 1D LUT, one curve a channel; refused where the look mixes channels', false)
    .option('--title <text>', 'title in the file; the look’s name when left out')
    .option('--plain', 'nothing but size and rows, for devices that stumble over more', false)
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExamples:\n  gatelight build looks/warm-stock-and-lamp.json -o warm.cube --size 33\n' +
        '  gatelight build looks/warm-stock-and-lamp.json -o warm.clf\n',
    )
    .action(async (lookPath: string, options: Options) => {
      const output = options.output ?? `${basename(lookPath).replace(/\.json$/i, '')}.cube`;
      const writing = { force: options.force, sources: [lookPath] };
      const size = sizeOf(options);
      const look = await loadLook(lookPath);
      await checkTarget(output, writing);
      const { curves } = options;
      const line = shareLine('table');
      const format = lutFormatOf(output);
      const asked = { ...options, size, format, onShare: line.tell };
      const { bytes } = (curves ? buildCurves : buildLook)(look, asked, maker);
      line.end();
      await writeSafely(output, bytes, writing);
      if (!options.plain) noteTitle(output, options.title ?? look.name, format);
      const extent = curves ? `curves of ${size} entries` : `${size} points`;
      terminal.result(
        `${printable(output)}: ${printable(look.name)}, ${extent}, ${counted(bytes.length)} bytes.`,
      );
    });
}

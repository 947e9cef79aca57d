import type { Command } from 'commander';
import { reelLogCsv } from '../../../files/reel-log.js';
import { writeSafely } from '../../../files/write-beside-then-rename.js';
import { forceOption } from '../../options.js';
import { printable, terminal } from '../../report.js';
import { loadLog, logOption } from './log-option.js';

interface Options {
  readonly log: string;
  readonly output?: string;
  readonly force: boolean;
}

export function addExport(log: Command): void {
  log
    .command('export')
    .summary('write the reel log as CSV')
    .description(
      'Writes the reels on record as comma-separated values (RFC 4180), one row a reel. Words that a spreadsheet would take for a formula get an apostrophe in front.',
    )
    .option(...logOption)
    .option('-o, --output <file>', 'the CSV file; printed when left out')
    .addOption(forceOption())
    .addHelpText('after', '\nExample:\n  gatelight log export -o reels.csv\n')
    .action(async ({ log: file, output, force }: Options) => {
      const entries = await loadLog(file);
      const csv = reelLogCsv(entries);
      if (output === undefined) process.stdout.write(csv);
      else {
        await writeSafely(output, csv, { force, sources: [file] });
        terminal.result(
          `${printable(output)}: ${entries.length} ${entries.length === 1 ? 'reel' : 'reels'}.`,
        );
      }
    });
}

import type { Command } from 'commander';
import type { ReelEntry } from '../../../files/reel-log.js';
import { jsonOption } from '../../options.js';
import { printable, printJson, terminal } from '../../report.js';
import { loadLog, logOption } from './log-option.js';

interface Options {
  readonly log: string;
  readonly reel?: string;
  readonly json: boolean;
}

/** A verdict in words: holds or not, by how much, why. */
function verdictWords({ holds, mean, p95, cause }: NonNullable<ReelEntry['verify']>): string {
  const why = cause === undefined ? '' : `: ${cause}`;
  return `${holds ? 'as the file says' : 'NOT as the file says'}, mean ${mean.toFixed(2)}, 95 % within ${p95.toFixed(2)} CIEDE2000${why}`;
}

/** What was said of a reel, each with its heading. */
function rowsOf({ gauge, stockNotes, lamp, shutter, look, cube, stills, verify, notes }: ReelEntry) {
  const rows: readonly (readonly [string, string | undefined])[] = [
    ['gauge', gauge],
    ['stock', stockNotes],
    ['lamp', lamp],
    ['shutter', shutter],
    ['look', look && [look.name, look.file].filter(Boolean).join(', ')],
    ['LUT file', cube?.file],
    ['stills', stills?.map(({ file }) => file).join(', ')],
    ['burn-in', verify && verdictWords(verify)],
    ['notes', notes],
  ];
  return rows.flatMap(([heading, words]) => (words ? [[heading, words] as const] : []));
}

/** Words that may hold line ends, on one line. */
const oneLine = (words: string) => printable(words.replace(/\s+/g, ' '));

/** A reel on one line, for lists. */
export const reelLine = ({ reel, recordedAt }: ReelEntry) => `${oneLine(reel)}, ${recordedAt}`;

export function addShow(log: Command): void {
  log
    .command('show')
    .summary('print the reels on record')
    .description('Prints the reels on record, the oldest first. Damaged lines are told and passed over.')
    .option(...logOption)
    .option('--reel <words>', 'only reels whose label holds these words')
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  gatelight log show --reel harbour\n')
    .action(async (options: Options) => {
      const wanted = options.reel?.toLowerCase() ?? '';
      const entries = (await loadLog(options.log)).filter(({ reel }) => reel.toLowerCase().includes(wanted));
      if (options.json) return printJson(entries);
      for (const entry of entries) {
        terminal.result(reelLine(entry));
        for (const [heading, words] of rowsOf(entry))
          terminal.result(`  ${heading.padEnd(9)}${oneLine(words)}`);
      }
      terminal.result(
        `${printable(options.log)}: ${entries.length} ${entries.length === 1 ? 'reel' : 'reels'}.`,
      );
    });
}

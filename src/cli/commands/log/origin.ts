import type { Command } from 'commander';
import { hashFile } from '../../../files/hash-file.js';
import type { ReelEntry } from '../../../files/reel-log.js';
import { type LutOrigin, lutOrigin } from '../../../jobs/lut-origin.js';
import { exitCodes } from '../../exit-codes.js';
import { loadLut } from '../../load.js';
import { version as ownVersion } from '../../maker.js';
import { jsonOption } from '../../options.js';
import { noteAll, printable, printJson, terminal } from '../../report.js';
import { loadLogIfAny, logOption } from './log-option.js';
import { reelLine } from './show.js';

interface Options {
  readonly log: string;
  readonly json: boolean;
}

const unsaid = 'the file does not say';

/** What the file was made of: a look, or the file that it undoes. */
function sourceRows({ look, undoes }: LutOrigin): [string, string][] {
  const source = look ?? undoes;
  if (source === undefined) return [['look', unsaid]];
  return [
    [look === undefined ? 'undoes' : 'look', source.name],
    ['', `SHA-256 ${source.sha256}`],
  ];
}

function originRows(origin: LutOrigin, sha256: string): [string, string][] {
  const { version, title, kind, size, takes, gives } = origin;
  const other = version === ownVersion ? '' : ` (this is ${ownVersion})`;
  return [
    ...sourceRows(origin),
    ['made with', version === undefined ? unsaid : `gatelight ${version}${other}`],
    ['table', kind === '3d' ? `${size} points a side` : `curves of ${size} entries`],
    ['takes', takes ?? unsaid],
    ['gives', gives ?? unsaid],
    ['title', title ?? 'none'],
    ['file', `SHA-256 ${sha256}`],
  ];
}

function tellReels(heading: string, reels: readonly ReelEntry[]): void {
  terminal.result(`${heading}: ${reels.length}`);
  for (const reel of reels) terminal.result(`  ${reelLine(reel)}`);
}

export function addOrigin(log: Command): void {
  log
    .command('origin')
    .summary('say which look made a LUT file, and which reels were recorded with it')
    .description(
      'Reads the provenance of a LUT file of ours (look, version, settings), and finds the reels on record that were recorded with that very file, or with another file of the same look. Of a way back: which file it undoes. Exit code 1: the file says neither.',
    )
    .argument('<lut>', 'LUT file (.cube, .clf)')
    .option(...logOption)
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  gatelight log origin warm.cube\n')
    .action(async (lutPath: string, options: Options, command: Command) => {
      const file = await loadLut(lutPath);
      noteAll(lutPath, file.notes);
      const [origin, sha256] = [lutOrigin(file), await hashFile(lutPath)];
      const entries = await loadLogIfAny(command);
      const sameFile = (entries ?? []).filter(({ cube }) => cube?.sha256 === sha256);
      const sameLook = (entries ?? []).filter(
        ({ cube, look }) => cube?.sha256 !== sha256 && look && look.sha256 === origin.look?.sha256,
      );
      if (options.json) printJson({ file: lutPath, sha256, ...origin, sameFile, sameLook });
      else {
        for (const [heading, words] of originRows(origin, sha256))
          terminal.result(`${heading.padEnd(10)}${printable(words)}`);
        if (entries === undefined)
          noteAll(options.log, ['there is no such reel log: no reels were looked for']);
        else {
          tellReels('Reels recorded with this file', sameFile);
          tellReels('Reels recorded with another file of the same look', sameLook);
        }
      }
      if (origin.look === undefined && origin.undoes === undefined) process.exitCode = exitCodes.notGood;
    });
}

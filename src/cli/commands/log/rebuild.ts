import type { Command } from 'commander';
import { hashFile } from '../../../files/hash-file.js';
import { checkTarget, writeSafely } from '../../../files/write-beside-then-rename.js';
import { lutOrigin, rebuildLut, tableDifference } from '../../../jobs/lut-origin.js';
import { canonicalLook } from '../../../look/canonical-look.js';
import { lutFormatOf } from '../../../lut/formats/index.js';
import type { LutFile } from '../../../lut/formats/lut-format.js';
import { exitCodes } from '../../exit-codes.js';
import { loadLook, loadLut } from '../../load.js';
import { maker, version } from '../../maker.js';
import { forceOption, jsonOption } from '../../options.js';
import { printable, printJson, terminal } from '../../report.js';

interface Options {
  readonly output?: string;
  readonly force: boolean;
  readonly json: boolean;
}

/** What the two files have in common, where not every byte is the same. */
function differenceWords(file: LutFile, rebuilt: LutFile): string {
  const apart = tableDifference(file.lut, rebuilt.lut);
  if (apart === undefined) return 'the tables are of different shape';
  return apart === 0
    ? 'the table is the same, but title, comments or line ends are not'
    : `values of the table differ by up to ${apart.toPrecision(2)}`;
}

/** Why the file cannot have come out the same; undefined when nothing speaks against it. */
function obstacle(file: LutFile, lookHash: string): string | undefined {
  const made = lutOrigin(file);
  if (made.undoes !== undefined)
    return `it was not built of a look: it is the way back from ${made.undoes.name}, which gatelight undo makes again`;
  if (made.look !== undefined && made.look.sha256 !== lookHash)
    return `the look file is not the one that made it: SHA-256 ${lookHash}, where the LUT file says ${made.look.sha256}`;
  if (made.version !== undefined && made.version !== version)
    return `it was made with gatelight ${made.version}, and this is ${version}`;
  if (made.look === undefined) return 'the file does not say which look made it, and this one does not';
  return undefined;
}

/** Why the rebuilt text is another, and how far. */
function reasonOf(file: LutFile, lookHash: string, text: string, lutPath: string): string {
  const reader = lutFormatOf(lutPath).createReader('the rebuilt file');
  reader.write(Buffer.from(text));
  const found = differenceWords(file, reader.end());
  const why = obstacle(file, lookHash);
  return why === undefined ? `the file has been changed since: ${found}` : `${why}; ${found}`;
}

export function addRebuild(log: Command): void {
  log
    .command('rebuild')
    .summary('build a LUT file again from its look, and say whether every byte is the same')
    .description(
      'Builds a LUT file again from the look file, with the settings it shows, and compares the two by SHA-256. When they differ it says why (another look, another version, a changed file), writes nothing and ends with exit code 1.',
    )
    .argument('<lut>', 'the LUT file there is (.cube, .clf)')
    .argument('<look>', 'the look file that made it')
    .option('-o, --output <file>', 'where the rebuilt file goes; without it the two are only compared')
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText('after', '\nExample:\n  gatelight log rebuild warm.cube looks/warm-stock-and-lamp.json\n')
    .action(async (lutPath: string, lookPath: string, options: Options) => {
      const writing = { force: options.force, sources: [lutPath, lookPath] };
      if (options.output !== undefined) await checkTarget(options.output, writing);
      const [file, look, sha256] = [
        await loadLut(lutPath),
        await loadLook(lookPath),
        await hashFile(lutPath),
      ];
      const format = lutFormatOf(lutPath);
      const text = rebuildLut(file, look, maker, format);
      const rebuiltHash = maker.sha256(text);
      const same = rebuiltHash === sha256;
      const reason = same ? undefined : reasonOf(file, maker.sha256(canonicalLook(look)), text, lutPath);
      if (same && options.output !== undefined) await writeSafely(options.output, text, writing);
      if (options.json) printJson({ file: lutPath, sha256, rebuilt: rebuiltHash, same, reason });
      else if (same) terminal.result(`${printable(lutPath)}: every byte the same, SHA-256 ${sha256}.`);
      else terminal.result(`${printable(lutPath)}: NOT the same: ${printable(reason ?? '')}.`);
      if (!same) process.exitCode = exitCodes.notGood;
    });
}

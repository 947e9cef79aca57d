import type { Command } from 'commander';
import { checkFile, isGood } from '../../jobs/check-lut.js';
import type { Finding } from '../../lut/checks/index.js';
import { exitCodes } from '../exit-codes.js';
import { loadLook, loadLut } from '../load.js';
import { jsonOption } from '../options.js';
import { noteAll, printable, printJson, terminal } from '../report.js';

interface Options {
  readonly against?: string;
  readonly json: boolean;
}

/** A finding's mark at the start of its line. */
function mark({ pass, severity }: Finding): string {
  if (pass) return 'good ';
  return severity === 'fault' ? 'FAULT' : 'note ';
}

export function addCheck(program: Command): void {
  program
    .command('check')
    .summary('ask a LUT every question before it is burnt in')
    .description(
      'Checks a LUT file: structure, range, neutral axis, fold-overs, ends, banding, warmth, contrast.',
    )
    .argument('<lut>', 'LUT file (.cube, .clf)')
    .option('--against <look>', 'the look file it was made of: also checks how near the table comes to it')
    .addOption(jsonOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight check warm.cube --against looks/warm-stock-and-lamp.json\n',
    )
    .action(async (lutPath: string, options: Options) => {
      const file = await loadLut(lutPath);
      const look = options.against === undefined ? undefined : await loadLook(options.against);
      const findings = checkFile(file, look);
      const good = isGood(findings);
      noteAll(lutPath, file.notes);
      if (options.json) printJson({ file: lutPath, good, findings, notes: file.notes });
      else {
        for (const finding of findings) terminal.result(`${mark(finding)} ${printable(finding.sentence)}`);
        terminal.result(`${printable(lutPath)}: ${good ? 'good' : 'NOT GOOD'}.`);
      }
      if (!good) process.exitCode = exitCodes.notGood;
    });
}

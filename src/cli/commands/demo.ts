import { resolve } from 'node:path';
import type { Command } from 'commander';
import { exitCodes } from '../exit-codes.js';
import { forceOption } from '../options.js';
import { printable, terminal } from '../report.js';

export function addDemo(program: Command): void {
  program
    .command('demo')
    .summary('build and check all ready looks, preview some on demo stills')
    .description(
      'Builds every ready look, checks each, draws frames of the film club’s faded reels and shows a look on each.',
    )
    .option('-o, --output <folder>', 'where everything goes', 'gatelight-demo')
    .addOption(forceOption())
    .addHelpText('after', '\nExample:\n  gatelight demo -o demo\n')
    .action(async (options: { output: string; force: boolean }) => {
      const { demonstrate } = await import('../demonstration.js');
      const good = await demonstrate(options.output, { force: options.force });
      terminal.result(`Everything lies in ${printable(resolve(options.output))}; open the previews first.`);
      if (!good) process.exitCode = exitCodes.notGood;
    });
}

import type { Command } from 'commander';
import { commandsFor } from './commands/index.js';
import { requireMovieAmong } from './kind-of-name.js';
import { version } from './maker.js';
import { OwnCommand } from './own-command.js';

/**
 * The whole command line, or what of it a first word needs.
 * @param first the first word of the command line; left out: every command
 */
export async function makeProgram(first?: string): Promise<Command> {
  const program = new OwnCommand('gatelight')
    .description(
      'One look per kind of reel: digitised small-gauge film, corrected and projected again, as a 3D LUT.',
    )
    .version(version)
    .exitOverride() // before the commands are added: they and theirs inherit it
    .addHelpText(
      'after',
      '\nExit codes: 0 done and good; 1 done, and the answer is "not good"; 2 input or use that cannot be worked with.',
    )
    .hook('preAction', (_, command) => {
      const { still, light } = command.opts<{ still?: unknown; light?: unknown }>();
      const given = [...command.processedArgs, still, light].flat();
      requireMovieAmong(
        command.opts(),
        given.filter((name) => typeof name === 'string'),
      );
    });
  for (const add of await commandsFor(first)) add(program);
  return program;
}

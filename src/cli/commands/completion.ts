import { Argument, type Command } from 'commander';
import { shells } from '../completion/index.js';
import { nameAmong } from '../options.js';
import { outlines } from '../outline.js';

export function addCompletion(program: Command): void {
  const names = Object.keys(shells);
  program
    .command('completion')
    .summary('print a script with which a shell completes the command line')
    .description(
      'Prints a script with which a shell completes commands, options and files. Take it up in the shell’s start-up file.',
    )
    .addArgument(
      new Argument('<shell>', 'the shell you use').choices(names).argParser(nameAmong('<shell>', names)),
    )
    .addHelpText(
      'after',
      '\nExamples:\n  gatelight completion bash >> ~/.bashrc\n  gatelight completion fish > ~/.config/fish/completions/gatelight.fish\n',
    )
    .action(async (shell: keyof typeof shells) => {
      const { makeProgram } = await import('../program.js');
      process.stdout.write(shells[shell](outlines(await makeProgram())));
    });
}

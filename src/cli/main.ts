#!/usr/bin/env node
import { Command, CommanderError } from 'commander';
import { InputError } from '../errors/input-error.js';
import { commandsFor } from './commands/index.js';
import { exitCodes } from './exit-codes.js';
import { version } from './maker.js';
import { printable, tellProblems, terminal } from './report.js';

async function makeProgram(): Promise<Command> {
  const program = new Command('gatelight')
    .description(
      'One look per kind of reel: digitised small-gauge film, corrected and projected again, as a 3D LUT.',
    )
    .version(version)
    .exitOverride() // before the commands are added: they and theirs inherit it
    .showHelpAfterError('Try gatelight --help, or gatelight help COMMAND.')
    .addHelpText(
      'after',
      '\nExit codes: 0 done and good; 1 done, and the answer is "not good"; 2 input or use that cannot be worked with.',
    );
  for (const add of await commandsFor(process.argv[2])) add(program);
  return program;
}

/** The exit code of an error, after it has been told. A bug of ours is told as one. */
function tell(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.good : exitCodes.unusable;
  if (error instanceof InputError) {
    tellProblems(error);
    return exitCodes.unusable;
  }
  const what = error instanceof Error ? error.message : String(error);
  terminal.note(
    `gatelight: a fault of the program itself: ${printable(what)}. Please report it; GATELIGHT_TRACE=1 shows where.`,
  );
  if (process.env.GATELIGHT_TRACE === '1' && error instanceof Error) terminal.note(error.stack ?? '');
  return exitCodes.unusable;
}

// A reader that closes early (`gatelight check ... | head`) is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  await (await makeProgram()).parseAsync();
} catch (error) {
  process.exitCode = tell(error);
}

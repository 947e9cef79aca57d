import { CommanderError } from 'commander';
import { InputError } from '../errors/input-error.js';
import { exitCodes } from './exit-codes.js';
import { makeProgram } from './program.js';
import { printable, tellProblems, terminal } from './report.js';

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

/** `help log add` asks what `log help add` does: commander's own goes one command deep. */
function wordsOf(given: readonly string[]): readonly string[] {
  const [first, ...asked] = given;
  return first === 'help' && asked.length > 1
    ? [...asked.slice(0, -1), 'help', asked[asked.length - 1]]
    : given;
}

/** Runs the command that the words ask for, to its end, and sets the exit code. */
export async function run(given: readonly string[]): Promise<void> {
  // A reader that closes early (`gatelight check ... | head`) is no error.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  try {
    const words = wordsOf(given);
    await (await makeProgram(words[0])).parseAsync(words, { from: 'user' });
  } catch (error) {
    process.exitCode = tell(error);
  }
}

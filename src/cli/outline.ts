import type { Argument, Command, Option } from 'commander';

/** A command of the tree, as help, completion and man page describe it. */
export interface Outline {
  /** Its words after the program's name: `log add`; empty for the program itself. */
  readonly place: string;
  readonly command: Command;
  /** The names of what stands below it, with one line each. */
  readonly below: readonly (readonly [name: string, summary: string])[];
  readonly arguments: readonly Argument[];
  /** Its own, and those of the sub-command that may be left out. */
  readonly options: readonly Option[];
}

/** The sub-command that stands for its parent alone: commander keeps it to itself. */
const usualBelow = (command: Command) =>
  (command as unknown as { _defaultCommandName?: string | null })._defaultCommandName;

/** Every command, parents before what stands below them. */
export function outlines(program: Command): Outline[] {
  const walk = (command: Command, place: string): Outline[] => {
    const help = command.createHelp();
    const commands = help.visibleCommands(command).filter((below) => below.name() !== 'help');
    const usual = commands.find((below) => below.name() === usualBelow(command));
    const named = commands.map((below) => [below.name(), help.subcommandDescription(below)] as const);
    const outline: Outline = {
      place,
      command,
      below: commands.length > 0 ? [...named, ['help', 'show what a command takes, with examples']] : named,
      arguments: command.registeredArguments,
      options: [
        ...help.visibleOptions(command),
        ...(usual === undefined ? [] : help.visibleOptions(usual)),
      ].filter(({ long }, i, all) => all.findIndex((other) => other.long === long) === i),
    };
    return [outline, ...commands.flatMap((below) => walk(below, `${place} ${below.name()}`.trim()))];
  };
  return walk(program, '');
}

/** The help of a command as it is printed. */
export function helpOf(command: Command): string {
  const output = command.configureOutput();
  let text = '';
  command.configureOutput({ ...output, writeOut: (words) => (text += words), getOutHelpWidth: () => 100 });
  command.outputHelp();
  command.configureOutput(output);
  return text;
}

/** The command lines under `Example:` in the help of a command. */
export function examplesOf(command: Command): string[] {
  const [, examples = ''] = helpOf(command).split(/\nExamples?:\n/);
  return [...examples.matchAll(/^ {2}(gatelight .*)$/gm)].map(([, line]) => line);
}

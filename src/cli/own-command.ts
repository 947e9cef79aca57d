import { Command, type ErrorOptions, type HelpContext } from 'commander';
import { InputError, type Problem } from '../errors/input-error.js';
import { nearestName } from '../errors/nearest-name.js';

/** Its words after the program's name. */
const placeOf = (command: Command): string =>
  command.parent === null ? '' : `${placeOf(command.parent)} ${command.name()}`.trim();

/** What commander finds wrong with a command line, in the words of every other refusal. */
function problemOf(command: Command, message: string, code: string | undefined): Problem {
  const [, words, near] = /^(?:error: )?([^]*?)(?:\n\(Did you mean ([^]*)\?\))?$/.exec(message)!;
  const named = [...words.matchAll(/'([^']*)'/g)].map(([, name]) => name);
  const [name = ''] = named;
  const hint = near === undefined ? {} : { hint: `Did you mean ${near}?` };
  switch (code) {
    case 'commander.missingArgument': {
      const argument = command.registeredArguments.find((one) => one.name() === name);
      const allowed = argument?.argChoices?.join(', ');
      return {
        what: `<${name}> is missing: ${argument?.description}`,
        ...(allowed === undefined ? {} : { allowed }),
      };
    }
    case 'commander.missingMandatoryOptionValue':
      return {
        what: `${name} is missing: ${command.options.find(({ flags }) => flags === name)?.description}`,
      };
    case 'commander.optionMissingArgument':
      return { what: `${name} is given without its value` };
    case 'commander.unknownOption':
      return { what: `there is no option "${name}"`, ...hint };
    case 'commander.excessArguments':
      return {
        what: `"${command.args[command.registeredArguments.length]}" is one word too many`,
        allowed: `${placeOf(command)} ${command.usage()}`,
      };
    case 'commander.conflictingOption':
      return { what: `${named.join(' cannot be used with ')}` };
    default:
      return { what: words, ...hint };
  }
}

/** A command that refuses what it does not understand in the words of every other refusal. */
export class OwnCommand extends Command {
  override createCommand(name?: string): OwnCommand {
    return new OwnCommand(name);
  }

  /** @throws InputError always */
  override error(message: string, { code }: ErrorOptions = {}): never {
    return this.refuse(problemOf(this, message, code));
  }

  /** Commander's own name for what it calls when a word is none of its commands. */
  unknownCommand(given = this.args[0]): never {
    const names = this.commands.map((command) => command.name());
    const near = nearestName(given, names);
    return this.refuse({
      what: `there is no command "${`${placeOf(this)} ${given}`.trim()}"`,
      allowed: names.join(', '),
      ...(near === undefined ? {} : { hint: `Did you mean ${near}?` }),
    });
  }

  /** Commander prints the whole help where that of a command is asked for that is none. */
  override help(context?: HelpContext | ((text: string) => string)): never {
    const [first, asked] = this.args;
    if (typeof context === 'object' && context.error && first === 'help' && asked !== undefined)
      this.unknownCommand(asked);
    return super.help(context as HelpContext);
  }

  private refuse(problem: Problem): never {
    const place = placeOf(this);
    const where = `gatelight ${place === '' ? '--help' : `help ${place}`} shows what there is.`;
    throw new InputError({ ...problem, hint: [problem.hint, where].filter(Boolean).join(' ') });
  }
}

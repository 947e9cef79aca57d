import type { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { examplesOf, helpOf, outlines } from '../../src/cli/outline.js';
import { makeProgram } from '../../src/cli/program.js';
import { gatelight, isPlainRefusal } from './gatelight.js';

const tree = outlines(await makeProgram());
const commands = tree.filter(({ place }) => place !== '');

/** The words of a command line as a shell splits them; what goes elsewhere than to the program is left out. */
function wordsOf(line: string): string[] {
  const [own] = line.split(/ [>|&]/);
  return [...own.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain).slice(1);
}

/** Which command a command line comes to, with its options read but nothing done. */
async function commandReached(words: readonly string[]): Promise<string | undefined> {
  const program = await makeProgram();
  let reached: string | undefined;
  const quiet = (command: Command, place: string): void => {
    command.configureOutput({ writeErr: () => undefined });
    command.action(() => void (reached = place));
    command.commands.forEach((below) => quiet(below, `${place} ${below.name()}`.trim()));
  };
  program.commands.forEach((command) => quiet(command, command.name()));
  await program.parseAsync([...words], { from: 'user' });
  return reached;
}

describe('help', () => {
  it('knows every command, sub-commands too', () => {
    const places = commands.map(({ place }) => place);
    for (const place of ['build', 'log', 'log add', 'log rebuild', 'capture sheet', 'completion'])
      expect(places).toContain(place);
  });

  it.each(commands)('of "$place" has a summary, a description and an example', ({ command }) => {
    expect(command.summary()).not.toBe('');
    expect(command.description()).toMatch(/\.$/);
    expect(examplesOf(command).length).toBeGreaterThan(0);
  });

  it.each(commands)(
    'of "$place" leaves the breaking of its lines to the width of the terminal',
    (outline) => {
      expect(outline.command.description()).not.toContain('\n');
    },
  );

  const examples = commands.flatMap(({ place, command }) =>
    examplesOf(command).map((line) => [line, place] as const),
  );
  it.each(examples)('its example is a command line that is understood: %s', async (line, place) => {
    const reached = await commandReached(wordsOf(line));
    expect(reached?.startsWith(place), `${line}: ${reached}`).toBe(true);
  });

  it('would know an example that is not', async () => {
    await expect(commandReached(['build', '--sise', '3', 'look.json'])).rejects.toThrow('there is no option');
    await expect(commandReached(['log', 'remove', 'A'])).rejects.toThrow();
  });

  it('is what the program prints', () => {
    const printed = gatelight(['help', 'completion']);
    expect(printed.status).toBe(0);
    const words = (text: string) => text.split(/\s+/).join(' ');
    const { command } = commands.find(({ place }) => place === 'completion')!;
    expect(words(printed.stdout)).toBe(words(helpOf(command)));
  });

  it('is asked for in two ways, of what stands below a command too', () => {
    const asked = gatelight(['help', 'log', 'add']);
    expect(asked.stdout).toMatch(/^Usage: gatelight log add /);
    expect(asked).toEqual(gatelight(['log', 'add', '--help']));
  });

  const below =
    'Allowed: sheet, exposure, speed. Did you mean speed? gatelight help capture shows what there is.';
  it.each<[string, string | RegExp]>([
    ['log ad Harbour', /no command "log ad"\. Allowed: add, .* Did you mean add\? gatelight help log shows/],
    ['capture sped --gauge 8mm', `there is no command "capture sped". ${below}`],
    ['help capture sped', `there is no command "capture sped". ${below}`],
    ['help biuld', /there is no command "biuld"\. .* Did you mean build\? gatelight --help/],
    ['biuld', /there is no command "biuld"\. .* Did you mean build\?/],
    ['build a.json --sise 3', /no option "--sise"\. Did you mean --size\? gatelight help build shows/],
    ['build a.json --size', /: --size <n> is given without its value\. gatelight help build/],
    ['build a.json b.json', /"b\.json" is one word too many\. Allowed: build \[options\] <look>/],
    ['log add', /: <reel> is missing: .+\. gatelight help log add shows/],
    ['completion', /: <shell> is missing: the shell you use\. Allowed: bash, zsh, fish\./],
    ['completion fihs', /: <shell>: "fihs" is not known\. Allowed: bash, .* Did you mean "fish"\?/],
    ['undo a.cube', /: -o, --output <file> is missing: the way back/],
    ['preview a b --flip x', /: --flip: "x" is not known\. Allowed: h, v, hv\./],
    ['apply a b -o c --resume --force', /: --(resume|force) cannot be used with --/],
  ])('is pointed to where a command line is not understood: %s', (line, words) => {
    const ended = gatelight(line.split(' '));
    expect(isPlainRefusal(ended), ended.stderr).toBe(true);
    expect(ended.stderr).toMatch(words);
  });
});

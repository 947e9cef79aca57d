import type { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { examplesOf, helpOf, outlines } from '../../src/cli/outline.js';
import { makeProgram } from '../../src/cli/program.js';
import { gatelight } from './gatelight.js';

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
    await expect(commandReached(['build', '--sise', '3', 'look.json'])).rejects.toThrow('unknown option');
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

  it('is pointed to where a command line is not understood', () => {
    const { status, stderr } = gatelight(['log', 'ad', 'Harbour 3']);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^gatelight: unknown command 'ad'\n\(Did you mean add\?\)\nTry gatelight --help/);
  });
});

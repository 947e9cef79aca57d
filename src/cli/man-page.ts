import type { Argument, Option } from 'commander';
import { examplesOf, type Outline } from './outline.js';
import { takesValue } from './completion/words.js';

/** Signs that roff has names for; every other sign beyond ASCII goes by its number. */
const names: Record<string, string> = {
  '’': '\\(cq',
  '‘': '\\(oq',
  '“': '\\(lq',
  '”': '\\(rq',
  '×': '\\(mu',
};

const sign = (letter: string): string =>
  names[letter] ?? `\\[u${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}]`;

/** A text as roff prints it: no line of it is taken for a request, and a dash can be copied. */
export function roff(text: string): string {
  return text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replace(/[^\x20-\x7e\n]/gu, sign)
    .replace(/^(?=[.'])/gm, '\\&');
}

const bold = (text: string) => `\\fB${roff(text)}\\fP`;
const italic = (text: string) => `\\fI${roff(text)}\\fP`;

function argumentWords(argument: Argument): string {
  const name = italic(argument.name()) + (argument.variadic ? roff('...') : '');
  return argument.required ? name : `[${name}]`;
}

/** `-o, --output <file>` with its words in two faces. */
function optionWords(option: Option): string {
  const [, value = ''] = /(\s[<[].*)$/.exec(option.flags) ?? [];
  const flags = option.flags.slice(0, option.flags.length - value.length);
  return bold(flags) + (takesValue(option) ? ` ${italic(value.trim().replace(/^[<[]|[>\]]$/g, ''))}` : '');
}

const allowed = (choices: readonly string[] | undefined): string =>
  choices === undefined ? '' : ` (${choices.join(', ')})`;

function usage({ place, command, arguments: given }: Outline): string {
  const words = [
    bold(`gatelight ${place}`.trim()),
    ...(command.options.length > 0 ? [`[${italic('options')}]`] : []),
  ];
  return [...words, ...given.map(argumentWords)].join(' ');
}

function section(outline: Outline): string[] {
  const { place, command, options, below } = outline;
  const own = options.filter(({ long }) => long !== '--help');
  const examples = examplesOf(command);
  return [
    `.SS ${bold(`gatelight ${place}`)}`,
    usage(outline),
    '.PP',
    roff(command.description().replace(/\s+/g, ' ')),
    ...outline.arguments.flatMap((argument) => [
      '.TP',
      italic(argument.name()),
      roff(argument.description + allowed(argument.argChoices)),
    ]),
    // Those of a sub-command stand with it.
    ...(below.length > 0 ? [] : own).flatMap((option) => [
      '.TP',
      optionWords(option),
      roff(option.description + allowed(option.argChoices)),
    ]),
    ...(examples.length === 0 ? [] : ['.PP', roff(examples.length > 1 ? 'Examples:' : 'Example:')]),
    ...(examples.length === 0 ? [] : ['.PP', '.nf', '.RS 4', ...examples.map(roff), '.RE', '.fi']),
  ];
}

/** Variables that are heeded. */
const environment = [
  [
    'GATELIGHT_FFMPEG',
    'The ffmpeg that decodes and encodes movie files, where it is not the one on the PATH.',
  ],
  ['GATELIGHT_FFPROBE', 'The ffprobe that tells what is in them, likewise.'],
  ['GATELIGHT_TRACE', 'Set to 1, a fault of the program itself shows where it happened.'],
] as const;

/** The manual page, section 1, in roff's man macros; made of what the commands say of themselves. */
export function manPage([program, ...commands]: readonly Outline[], version: string): string {
  return [
    `.TH GATELIGHT 1 "" ${roff(`"gatelight ${version}"`)} "User Commands"`,
    '.SH NAME',
    `gatelight \\- ${roff('one look per kind of reel, as a checked 3D LUT')}`,
    '.SH SYNOPSIS',
    `${bold('gatelight')} ${italic('command')} [${italic('options')}] [${italic('files')}]`,
    '.SH DESCRIPTION',
    roff(program.command.description()),
    '.PP',
    roff(
      'Results go to standard output, progress and notes to standard error. Nothing is ever half written, nothing existing is overwritten without --force, and a source never.',
    ),
    '.SH COMMANDS',
    ...commands.flatMap(section),
    '.SH EXIT STATUS',
    ...[
      '0',
      'Done, and the answer is good.',
      '1',
      'Done, and the answer is not good.',
      '2',
      'Input or use that cannot be worked with.',
    ].flatMap((words, i) => (i % 2 === 0 ? ['.TP', bold(words)] : [roff(words)])),
    '.SH ENVIRONMENT',
    ...environment.flatMap(([name, words]) => ['.TP', bold(name), roff(words)]),
    '',
  ].join('\n');
}

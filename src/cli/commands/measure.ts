import { extname } from 'node:path';
import { type Command, Option } from 'commander';
import { InputError } from '../../errors/input-error.js';
import { checkTarget, writeSafely, type WriteOptions } from '../../files/write-beside-then-rename.js';
import { dyeSets } from '../../film/dye-sets/index.js';
import { type MeasuredReel, measureReelToLook } from '../../jobs/measure-reel.js';
import { reelLines } from '../../jobs/reel-words.js';
import { reportReel } from '../../jobs/report-reel.js';
import type { Encoding } from '../../look/sections/signal.js';
import { namesOf } from '../../look/sections/section.js';
import {
  type MarkKind,
  markKinds,
  type Marks,
  type MeasureOptions,
  smallestEdge,
  type Still,
} from '../../measure/index.js';
import type { LabelFonts } from '../../preview/typeface.js';
import { ceilingOption, encodingOption, loadStills, writtenAs } from '../camera-options.js';
import { checkPicture, drawnFile } from '../drawn-picture.js';
import { loadEngine } from '../engine/load-engine.js';
import { loadLikeLook } from '../like-look.js';
import {
  forceOption,
  jsonOption,
  matrixOption,
  nameOption,
  numberOption,
  rangeOption,
  wholeNumber,
} from '../options.js';
import { checkRectangle, collectRectangles, type GivenRectangle } from '../rectangles.js';
import { repeatedStills } from '../repeated-stills.js';
import { noteAll, printable, printJson, terminal } from '../report.js';
import { shellWord } from '../shell-word.js';
import { chosenStills, usualStills } from './measure/chosen-stills.js';
import { type LightOptions, measureLight } from './measure/light.js';

interface Options extends LightOptions, Readonly<Record<MarkKind, readonly GivenRectangle[]>> {
  readonly light?: string;
  readonly stills?: number;
  readonly keep?: string;
  readonly encoding?: Encoding;
  readonly openGate?: number;
  readonly stock: MeasureOptions['dyes'];
  readonly like?: string;
  readonly output?: string;
}

/** What each kind of rectangle marks, for people. */
const markHelp = {
  black: 'unexposed film: frame line, border',
  clear: 'the light with no film at all: perforation, punched leader',
  film: 'fully clear film: light-struck leader, a scratch to the base',
  neutral: 'something known to have been grey or white: cloth, road, snow in shade',
} as const satisfies Record<MarkKind, string>;

const markOption = (kind: MarkKind) =>
  new Option(`--${kind} <[n:]x,y,w,h>`, `${markHelp[kind]} (repeatable)`)
    .argParser<readonly GivenRectangle[]>(collectRectangles(`--${kind}`))
    .default([], 'none');

/** Options that only a reel has, and that only the light has. */
const reelOnly = [...markKinds, 'stills', 'keep', 'openGate', 'stock', 'output'];
const lightOnly = ['ceiling', 'whiteBalance'] as const;

function requireStills(paths: readonly string[], { ceiling, whiteBalance }: Options): void {
  if (paths.length === 0)
    throw new InputError({
      what: 'no still was given',
      hint: 'Name one or more stills of the reel, or the open gate with --light STILL.',
    });
  const given = { ceiling, whiteBalance };
  const stray = lightOnly.find((name) => given[name] !== undefined);
  if (stray !== undefined)
    throw new InputError({
      field: stray === 'ceiling' ? '--ceiling' : '--white-balance',
      what: 'is for the open gate only',
      hint: 'Use it with --light STILL.',
    });
}

/** Refuses targets that cannot be written, before anything is measured. */
async function checkTargets({ output, report }: Options, writing: WriteOptions): Promise<void> {
  if (output !== undefined) {
    if (extname(output).toLowerCase() !== '.json')
      throw new InputError({
        file: output,
        what: 'a look file is named .json',
        hint: 'Write the look first; gatelight build makes a .cube of it.',
      });
    await checkTarget(output, writing);
  }
  await checkPicture(report, writing);
}

/** The rectangles of the command line as marks. @throws InputError unless each lies in its still and is large enough */
function marksOf(options: Options, stills: readonly Still[]): Marks {
  const marks = markKinds.map((kind) => {
    for (const rectangle of options[kind]) checkRectangle(rectangle, stills, smallestEdge);
    return [kind, options[kind].map(({ still, box }) => ({ still: still + 1, ...box }))] as const;
  });
  return Object.fromEntries(marks);
}

/** @throws InputError where two stills show the very same pixels: the second would count as evidence, and is none */
function requireDifferent(stills: readonly Still[]): void {
  const repeated = repeatedStills(stills);
  if (repeated.length === 0) return;
  throw new InputError(
    repeated.map(({ name, what }) => ({ file: name, what, hint: 'Give each still once.' })),
  );
}

async function measureStills(given: readonly string[], options: Options): Promise<void> {
  requireStills(given, options);
  const { openGate, stock, like: likePath, output, report } = options;
  const writing = {
    force: options.force,
    sources: [...given, ...(likePath === undefined ? [] : [likePath])],
  };
  await checkTargets(options, writing);
  const like = likePath === undefined ? undefined : await loadLikeLook(likePath, output ?? likePath);
  const paths = await chosenStills(given, options);
  const written = await writtenAs(options, paths, like?.look.camera);
  const stills = await loadStills(paths, options);
  // Stills picked from a movie may be alike where nothing moves; that is for the picking to mind.
  if (paths === given) requireDifferent(stills);
  const marks = marksOf(options, stills);
  const reel = measureReelToLook({ stills, marks, dyes: stock, openGate, written, like });
  for (const { name, why } of reel.unused) noteAll(name, [`${why}: it was not used`]);
  const draw = (fonts: LabelFonts) => reportReel(reel, stills, fonts, loadEngine());
  const drawn = report === undefined ? undefined : await drawnFile(report, draw);
  if (output !== undefined) await writeSafely(output, reel.text, writing);
  if (report !== undefined && drawn !== undefined) await writeSafely(report, drawn, writing);
  tell(reel, paths, options);
}

function tell({ measurement, look, unused }: MeasuredReel, paths: readonly string[], options: Options): void {
  const { stock, output, report } = options;
  if (options.json) {
    // The cloud is for the report: thousands of numbers.
    printJson({ stills: paths, unused, output, report, name: look.name, ...measurement, cloud: undefined });
    return;
  }
  for (const line of reelLines(measurement, stock)) terminal.result(printable(line));
  if (report !== undefined) terminal.result(`${printable(report)}: the report, as a picture.`);
  terminal.result(
    output === undefined
      ? 'No look was written: name one with -o LOOK.json.'
      : `${printable(output)}: ${printable(look.name)}. See it first: gatelight preview ${printable(shellWord(output))} ${printable(shellWord(paths[0]))}`,
  );
}

export function addMeasure(program: Command): void {
  const command = program
    .command('measure')
    .summary('read a reel’s fading off its own stills, or measure the gate light')
    .description(
      'Reads off one or more stills of a reel what time did to its dyes, and writes a look that gives them back. Three or ' +
        'four stills tell far more than one; rectangles for what is known in the picture tell more still. A rectangle is ' +
        'x,y,width,height in pixels of the first still, or N:x,y,width,height of the Nth. With --light, reads the open ' +
        'gate without film instead: its colour, evenness and exposure.',
    )
    .argument(
      '[stills...]',
      'PNG, JPEG or TIFF of one reel, recorded with no look; frames of a movie: reel.mkv@1:20.5; or one movie',
    );
  for (const kind of markKinds) command.addOption(markOption(kind));
  command
    .addOption(encodingOption())
    .option(
      '--open-gate <level>',
      'linear level of the light without film, 1 is diffuse white, if it is known',
      numberOption('--open-gate', 0.0001, 100),
    )
    .addOption(
      nameOption('--stock <name>', 'dye set of the stock; auto takes the one that fits best', [
        'auto',
        ...namesOf(dyeSets),
      ]).default('auto'),
    )
    .option('--like <look>', 'look file to fill in; all that is not measured stays as it is there')
    .option('-o, --output <file>', 'the look file (.json); nothing is written when left out')
    .option('--report <file>', 'the report as a picture (.png, .jpg, .tif)')
    .addOption(
      new Option('--light <still>', 'measure this still of the open gate instead of a reel').conflicts(
        reelOnly,
      ),
    )
    .option(
      '--white-balance <kelvin>',
      'with --light: what the camera’s white balance is set to',
      numberOption('--white-balance', 1500, 25000),
    )
    .addOption(ceilingOption('with --light: '))
    .option(
      '--stills <n>',
      `of one movie file: pick so many stills of it (${usualStills} when left out)`,
      wholeNumber('--stills', 1, 64),
    )
    .option('--keep <folder>', 'of one movie file: write the stills that were picked, 16 bit PNG')
    .addOption(matrixOption())
    .addOption(rangeOption())
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExamples:\n' +
        '  gatelight measure frame-1.png frame-2.png frame-3.png -o reel.json --report reel.png\n' +
        '  gatelight measure edge.png --black 10,40,60,200 --clear 20,400,50,80 --neutral 700,300,90,60 -o reel.json\n' +
        '  gatelight measure reel.mkv --stills 8 --keep stills/ -o reel.json\n' +
        '  gatelight measure --light open-gate.png --report open-gate-seen.png\n',
    )
    .action(async (paths: string[], options: Options) => {
      if (options.light === undefined) await measureStills(paths, options);
      else await measureLight(options.light, paths, options);
    });
}

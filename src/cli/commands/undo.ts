import { createHash } from 'node:crypto';
import { type Command, Option } from 'commander';
import { InputError } from '../../errors/input-error.js';
import { checkTarget, writeSafely, type WriteOptions } from '../../files/write-beside-then-rename.js';
import { signalsIn } from '../../jobs/build-look.js';
import { type BurntLut, burntSignals, undoLook, type WayBack } from '../../jobs/undo-look.js';
import { type StillLoss, stillWords, undoSheet } from '../../jobs/undo-sheet.js';
import {
  comesBack,
  cutSentence,
  lossSentences,
  regionLines,
  wayBackSentence,
} from '../../jobs/undo-words.js';
import { lutFormatOf } from '../../lut/formats/index.js';
import { checkPicture } from '../drawn-picture.js';
import { loadEngine } from '../engine/load-engine.js';
import { exitCodes } from '../exit-codes.js';
import { loadLut, signalsUnknown } from '../load.js';
import { version } from '../maker.js';
import {
  type ClipOptions,
  forceOption,
  jsonOption,
  matrixOption,
  rangeOption,
  wholeNumber,
} from '../options.js';
import { noteAll, printable, printJson, terminal } from '../report.js';
import { openStillFor } from '../still-for-look.js';
import { noteTitle } from '../title-note.js';

interface Options extends ClipOptions {
  readonly output: string;
  readonly size: number;
  readonly clamp: boolean;
  readonly bits: number;
  readonly title?: string;
  readonly plain: boolean;
  readonly still?: string;
  readonly picture?: string;
  readonly json: boolean;
  readonly force: boolean;
}

async function loadBurnt(path: string): Promise<BurntLut> {
  if (path.toLowerCase().endsWith('.json'))
    throw new InputError({
      file: path,
      what: 'is a look; what is burnt in, and undone, is a LUT file',
      hint: 'Name the .cube that the device has, or make it again: gatelight build.',
    });
  const hash = createHash('sha256');
  const file = await loadLut(path, (bytes) => hash.update(bytes));
  const signals = signalsIn(file);
  noteAll(path, signals === undefined ? [...file.notes, signalsUnknown] : file.notes);
  return { lut: file.lut, signals, name: file.title ?? path, sha256: hash.digest('hex') };
}

/** Draws where on a still something is lost, and writes it if it was asked for. */
async function lookAtStill(
  burnt: BurntLut,
  back: WayBack,
  still: string,
  options: Options,
  writing: WriteOptions,
): Promise<StillLoss> {
  const { loadLabelFonts } = await import('../../stills/label-fonts.js');
  const signals = burntSignals(burnt);
  const { picture, notes } = await openStillFor(signals.input, still, options);
  noteAll(still, notes);
  const loss = undoSheet(
    { lut: burnt.lut, signals },
    back,
    { name: still, picture },
    loadLabelFonts(),
    loadEngine(),
  );
  const { picture: output } = options;
  if (output !== undefined) {
    const { encodeStill } = await import('../../stills/write-still.js');
    await writeSafely(output, (await encodeStill(output, loss.picture)).bytes, writing);
  }
  return loss;
}

/** Refuses targets that cannot be written, before anything is worked out. */
async function checkTargets({ output, still, picture }: Options, writing: WriteOptions): Promise<void> {
  lutFormatOf(output);
  await checkTarget(output, writing);
  if (picture === undefined) return;
  if (still === undefined)
    throw new InputError({ field: '--picture', what: 'shows a still', hint: 'Name it with --still STILL.' });
  await checkPicture(picture, writing);
}

const lost = ({ marks }: StillLoss) => Object.fromEntries(marks.map(({ loss, share }) => [loss, share]));

export function addUndo(program: Command): void {
  program
    .command('undo')
    .summary('the best way back from a burnt-in LUT, and what cannot come back')
    .description(
      'Makes the LUT that best takes a burnt-in look out again, and says honestly what does not come back: burnt out, ' +
        'blocked, folded over. Of the whole cube, region by region, and on a still. Exit code 1 when more than 5 % of ' +
        'all colours are off by more than 4 codes of 255; the file is written all the same.',
    )
    .argument('<lut>', 'the LUT file that was burnt in (.cube, .clf)')
    .requiredOption('-o, --output <file>', 'the way back (.cube, .clf)')
    .option('--size <n>', 'nodes a side, 2 to 65', wholeNumber('--size', 2, 65), 33)
    .option('--clamp', 'hold values within 0 to 1, for devices that take no others', false)
    .addOption(
      new Option('--bits <n>', 'bits of the recording that the look was burnt into')
        .argParser(wholeNumber('--bits', 8, 16))
        .default(10),
    )
    .option('--title <text>', 'title in the file; named after the source when left out')
    .option('--plain', 'nothing but size and rows, for devices that stumble over more', false)
    .option('--still <still>', 'a still as it is before the look: what is lost on it')
    .option('--picture <file>', 'with --still: show where (.png, .jpg, .tif)')
    .addOption(matrixOption())
    .addOption(rangeOption())
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExamples:\n  gatelight undo warm.cube -o back.cube\n' +
        '  gatelight undo warm.cube -o back.cube --size 65 --still plain.png --picture lost.png\n',
    )
    .action(async (lutPath: string, options: Options) => {
      const { output, still, picture } = options;
      const writing = { force: options.force, sources: still === undefined ? [lutPath] : [lutPath, still] };
      await checkTargets(options, writing);
      const burnt = await loadBurnt(lutPath);
      const format = lutFormatOf(output);
      const back = undoLook(burnt, { ...options, format }, version);
      const seen = still === undefined ? undefined : await lookAtStill(burnt, back, still, options, writing);
      await writeSafely(output, back.text, writing);
      if (!options.plain) noteTitle(output, back.title, format);
      const good = comesBack(back);
      if (!good) process.exitCode = exitCodes.notGood;
      const { trip, cutTrip } = back;
      if (options.json) {
        const { regions: _, ...cut } = cutTrip;
        const onStill = seen && { still, picture, lost: lost(seen) };
        printJson({ file: lutPath, output, good, sha256: burnt.sha256, ...trip, cut, ...onStill });
        return;
      }
      tellWayBack(back, output);
      if (seen !== undefined)
        terminal.result(
          `\n${printable(still!)}: ${stillWords(seen.marks)}.${picture === undefined ? '' : ` See ${printable(picture)}.`}`,
        );
      terminal.result(
        `\n${printable(output)}: ${good ? 'good' : 'NOT GOOD, more than 5 % of all colours do not come back'}.`,
      );
    });
}

function tellWayBack(back: WayBack, output: string): void {
  const { lut, title } = back;
  const extent = lut.kind === '3d' ? `${lut.size} points` : `curves of ${lut.size} entries`;
  terminal.result(`${printable(output)}: ${printable(title)}, ${extent}.`);
  terminal.result(wayBackSentence(back));
  const cut = cutSentence(back);
  if (cut !== undefined) terminal.result(cut);
  terminal.result('\n95 % come back within so many codes of 255 (share that is off by more than 4):');
  for (const line of regionLines(back)) terminal.result(line);
  const sentences = lossSentences(back);
  if (sentences.length > 0) terminal.result('\nWhat does not come back, of all colours:');
  for (const sentence of sentences) terminal.result(`- ${sentence}`);
}

import { stat } from 'node:fs/promises';
import { type Command, Option } from 'commander';
import { InputError } from '../../errors/input-error.js';
import { writeSafely } from '../../files/write-beside-then-rename.js';
import { causeWords, verdictSentence, verdictSentences } from '../../jobs/burn-in-words.js';
import type { Signal } from '../../jobs/signal.js';
import { type BurnIn, burnInSheet, verifyBurnIn } from '../../jobs/verify-burn-in.js';
import type { Explanation, Verdict } from '../../burn-in/verify.js';
import type { Lut } from '../../lut/lattice.js';
import type { LabelFonts } from '../../preview/typeface.js';
import { checkPicture, drawnFile } from '../drawn-picture.js';
import { loadEngine } from '../engine/load-engine.js';
import { exitCodes } from '../exit-codes.js';
import { loadSource } from '../load.js';
import { type ClipOptions, forceOption, jsonOption, matrixOption, rangeOption } from '../options.js';
import { noteAll, printable, printJson, terminal } from '../report.js';
import { openStillFor } from '../still-for-look.js';

interface Options extends ClipOptions {
  readonly other: readonly string[];
  readonly picture?: string;
  readonly json: boolean;
  readonly force: boolean;
}

async function loadStill(name: string, signal: Signal, options: Options): Promise<BurnIn['plain']> {
  const { picture, notes } = await openStillFor(signal, name, options);
  noteAll(name, notes);
  return { name, picture };
}

/** Other LUTs, by the names they were given with: their titles may be alike. */
async function loadOthers(paths: readonly string[]): Promise<NonNullable<BurnIn['others']>> {
  const others: { name: string; lut: Lut }[] = [];
  for (const path of paths) others.push({ name: path, lut: (await loadSource(path)).lut });
  return others;
}

/** One file for both would agree with 'not applied', and say nothing of the device. */
async function requireTwo(plain: string, burnt: string): Promise<void> {
  const entries = await Promise.all([plain, burnt].map((path) => stat(path).catch(() => undefined)));
  const [a, b] = entries;
  if (plain !== burnt && (a === undefined || b === undefined || a.ino !== b.ino || a.dev !== b.dev)) return;
  throw new InputError({
    file: burnt,
    what: 'is given twice, as the still without the look and as the one with it',
    hint: 'Name the still without the look first, then the one with it.',
  });
}

/** An explanation as JSON: the cause's name, and the words that people read. */
const plainly = ({ cause, mean, p95, rms, ...rest }: Explanation) => ({
  name: cause,
  words: causeWords({ cause, mean, p95, rms, ...rest }),
  mean,
  p95,
  rms,
});

function tell(names: object, verdict: Verdict, { json, picture }: Options): void {
  const { cause, tried, ...rest } = verdict;
  if (json) {
    const sentences = [verdictSentence(verdict), ...verdictSentences(verdict)];
    const explained = { cause: cause === undefined ? null : plainly(cause), tried: tried.map(plainly) };
    printJson({ ...names, picture, ...rest, ...explained, sentences });
    return;
  }
  terminal.result(verdictSentence(verdict));
  for (const sentence of verdictSentences(verdict)) terminal.result(printable(sentence));
  if (picture !== undefined) terminal.result(`See ${printable(picture)}.`);
  terminal.result(verdict.holds ? 'good' : 'NOT GOOD');
}

export function addVerify(program: Command): void {
  program
    .command('verify')
    .summary('whether a device burnt in what the file says, and if not, why')
    .description(
      'Compares two stills of the same frame, one recorded without and one with the look loaded: did the device do what ' +
        'the file says? When it did not, tries the usual causes and names the one that fits best, and what to do. Shifts ' +
        'of up to 3 pixels and recording noise do no harm. Exit code 0: it did; 1: it did not, or the stills were not taken ' +
        'alike; 2: cannot be told.',
    )
    .argument(
      '<plain>',
      'still recorded without the look (PNG, JPEG, TIFF, or a frame of a movie: reel.mkv@f120)',
    )
    .argument('<burnt>', 'still of the same frame, recorded with it')
    .argument('<look>', 'the LUT that was loaded (.cube, .clf), or its look file (.json)')
    .addOption(
      new Option('--other <lut>', 'another look or LUT that may have been loaded instead (repeatable)')
        .argParser((path: string, before: readonly string[]) => [...before, path])
        .default([], 'none'),
    )
    .option('--picture <file>', 'show where it differs (.png, .jpg, .tif)')
    .addOption(matrixOption())
    .addOption(rangeOption())
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExamples:\n  gatelight verify plain.png burnt.png warm.cube --picture verdict.png\n' +
        '  gatelight verify plain.png burnt.png warm.cube --other xenon.cube --other pink.cube --json\n',
    )
    .action(async (plain: string, burnt: string, lookPath: string, options: Options) => {
      const { picture, other } = options;
      const writing = { force: options.force, sources: [plain, burnt, lookPath, ...other] };
      await checkPicture(picture, writing);
      await requireTwo(plain, burnt);
      const look = await loadSource(lookPath);
      const others = await loadOthers(other);
      const { input, output } = look.signals;
      const burnIn = {
        plain: await loadStill(plain, input, options),
        burnt: await loadStill(burnt, output, options),
        look,
        others,
      };
      const verdict = verifyBurnIn(burnIn);
      const draw = (fonts: LabelFonts) => burnInSheet(burnIn, verdict, fonts, loadEngine());
      if (picture !== undefined) await writeSafely(picture, await drawnFile(picture, draw), writing);
      tell({ plain, burnt, file: lookPath, look: look.name }, verdict, options);
      if (!verdict.holds) process.exitCode = exitCodes.notGood;
    });
}

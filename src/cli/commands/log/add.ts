import type { Command } from 'commander';
import { z } from 'zod';
import { InputError } from '../../../errors/input-error.js';
import { hashFile } from '../../../files/hash-file.js';
import { readTextBounded } from '../../../files/read-bounded.js';
import { appendReel, isRecordTime, type ReelEntry } from '../../../files/reel-log.js';
import { lutOrigin } from '../../../jobs/lut-origin.js';
import { canonicalLook } from '../../../look/canonical-look.js';
import { loadLook, loadLut } from '../../load.js';
import { maker } from '../../maker.js';
import { jsonOption, refuseOption } from '../../options.js';
import { noteAll, printable, printJson, terminal } from '../../report.js';
import { logOption } from './log-option.js';

interface Options {
  readonly log: string;
  readonly gauge?: string;
  readonly stock?: string;
  readonly lamp?: string;
  readonly shutter?: string;
  readonly look?: string;
  readonly cube?: string;
  readonly still?: readonly string[];
  readonly verify?: string;
  readonly notes?: string;
  readonly recordedAt?: string;
  readonly json: boolean;
}

const gather = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

function readTime(text: string): string {
  if (isRecordTime(text)) return text;
  return refuseOption('--recorded-at', text, 'date and time with its zone, such as 2026-03-01T19:30:00Z');
}

const hashed = async (file: string) => ({ file, sha256: await hashFile(file) });

/** The look file that was named, or the look that the LUT file itself names; the two must be one. */
async function lookOf({ look, cube }: Options): Promise<ReelEntry['look']> {
  const file = cube === undefined ? undefined : await loadLut(cube);
  const said = file && lutOrigin(file).look;
  if (cube !== undefined && said === undefined && look === undefined)
    noteAll(cube, ['does not say which look made it; --look can']);
  if (look === undefined) return said;
  const read = await loadLook(look);
  const sha256 = maker.sha256(canonicalLook(read));
  if (said !== undefined && said.sha256 !== sha256)
    throw new InputError({
      file: look,
      what: `is not the look that made ${cube}: that one is "${said.name}" with SHA-256 ${said.sha256}`,
      hint: 'Leave out --look: the LUT file says which look made it.',
    });
  return { name: read.name, file: look, sha256 };
}

/** What `gatelight verify --json` prints, as far as the log keeps it. */
const verdict = z.looseObject({
  holds: z.boolean(),
  mean: z.number(),
  p95: z.number(),
  cause: z
    .union([z.string(), z.looseObject({ words: z.string() }).transform(({ words }) => words)])
    .nullish(),
});

/** A verdict is a few kilobytes. */
const mostVerdictBytes = 1_000_000;

async function verifyOf({ verify }: Options): Promise<ReelEntry['verify']> {
  if (verify === undefined) return undefined;
  const text = await readTextBounded(verify, mostVerdictBytes);
  const read = verdict.safeParse(parsed(text));
  if (!read.success)
    throw new InputError({
      file: verify,
      what: 'holds no result of verify',
      hint: 'Make it with: gatelight verify PLAIN BURNT FILE.cube --json',
    });
  const { holds, mean, p95, cause } = read.data;
  return { holds, mean, p95, ...(cause ? { cause } : {}) };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

async function entryOf(reel: string, options: Options): Promise<ReelEntry> {
  const { gauge, stock, lamp, shutter, cube, still = [], notes, recordedAt } = options;
  const [look, verify] = [await lookOf(options), await verifyOf(options)];
  const stills: { file: string; sha256: string }[] = [];
  for (const file of still) stills.push(await hashed(file));
  const entry: ReelEntry = {
    version: 1,
    reel,
    recordedAt: recordedAt ?? new Date().toISOString(),
    gauge,
    stockNotes: stock,
    lamp,
    shutter,
    look,
    ...(cube === undefined ? {} : { cube: await hashed(cube) }),
    ...(stills.length === 0 ? {} : { stills }),
    verify,
    notes,
  };
  return JSON.parse(JSON.stringify(entry)) as ReelEntry; // without what was not said
}

export function addReel(log: Command): void {
  log
    .command('add')
    .summary('put a reel on record')
    .description(
      'Adds one line to the reel log. Files are kept by name and SHA-256; of a LUT file also the look that made it.',
    )
    .argument('<reel>', 'the label on the can')
    .option(...logOption)
    .option('--gauge <words>', 'width of the film')
    .option('--stock <words>', 'what leader and picture tell of the stock: kind, age, fading, damage')
    .option('--lamp <words>', 'the lamp and its setting')
    .option('--shutter <words>', 'exposure time, blades, speeds')
    .option('--cube <file>', 'the LUT file that was loaded')
    .option('--look <file>', 'the look file, where the LUT file does not say')
    .option('--still <file>', 'a still of the reel; give it again for more', gather)
    .option('--verify <file>', 'what gatelight verify --json said')
    .option('--notes <words>', 'anything else')
    .option('--recorded-at <time>', 'such as 2026-03-01T19:30:00Z; now when left out', readTime)
    .addOption(jsonOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight log add "Harbour 3" --gauge super8 --lamp "half of its range" --cube warm.cube\n',
    )
    .action(async (reel: string, options: Options) => {
      const entry = await entryOf(reel, options);
      await appendReel(options.log, entry);
      if (options.json) printJson(entry);
      else terminal.result(`${printable(options.log)}: ${printable(reel)} is on record.`);
    });
}

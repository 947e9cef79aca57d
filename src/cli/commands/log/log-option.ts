import { existsSync } from 'node:fs';
import type { Command } from 'commander';
import { type ReelEntry, readReelLog } from '../../../files/reel-log.js';
import { noteAll } from '../../report.js';

/** Where the log lies when nothing is asked: in the working folder. */
const usualLog = 'reels.jsonl';

export const logOption = ['--log <file>', 'the reel log', usualLog] as const;

/** The reels on record, damaged lines told. @throws InputError when there is no such log */
export async function loadLog(file: string): Promise<readonly ReelEntry[]> {
  const { entries, damaged } = await readReelLog(file);
  noteAll(
    file,
    damaged.map(({ line, what }) => `line ${line} ${what}; it is set aside`),
  );
  return entries;
}

/** As {@link loadLog}, but no log at all where none was named and none is there. */
export async function loadLogIfAny(command: Command): Promise<readonly ReelEntry[] | undefined> {
  const { log } = command.opts<{ log: string }>();
  const named = command.getOptionValueSource('log') !== 'default';
  return named || existsSync(log) ? loadLog(log) : undefined;
}

import { createReadStream } from 'node:fs';
import { InputError } from '../../errors/input-error.js';
import { fileProblem, systemCode } from '../file-problem.js';
import type { ReelEntry } from './entry.js';
import { longestRecord, parseRecord } from './entry.js';

/** One line that is no record. */
export interface DamagedLine {
  /** Counted from 1. */
  readonly line: number;
  readonly what: string;
}

export interface ReelLog {
  readonly entries: readonly ReelEntry[];
  /** Lines set aside; every other line stands. */
  readonly damaged: readonly DamagedLine[];
}

/** The largest log that is read, in bytes: some 100 000 reels. Memory stays within a few times this. */
export const largestLog = 64 * 1024 * 1024;
/** With more lines than this set aside, the file is something else. */
const mostDamaged = 1000;

/** Splits a stream of bytes into lines; of a line beyond {@link longestRecord} only undefined is handed on. */
async function* linesOf(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string | undefined> {
  let parts: Uint8Array[] = [];
  let length = 0;
  const keep = (part: Uint8Array) => {
    length += part.length;
    if (length <= longestRecord) parts.push(part);
    else parts = [];
  };
  const taken = () => {
    const line = length > longestRecord ? undefined : Buffer.concat(parts).toString('utf8');
    [parts, length] = [[], 0];
    return line;
  };
  for await (const chunk of chunks) {
    let start = 0;
    for (let end = chunk.indexOf(0x0a); end >= 0; end = chunk.indexOf(0x0a, start)) {
      keep(chunk.subarray(start, end));
      yield taken();
      start = end + 1;
    }
    keep(chunk.subarray(start));
  }
  if (length > 0) yield taken();
}

function described(error: unknown, file: string): unknown {
  if (systemCode(error) === 'ENOENT')
    return new InputError({
      file,
      what: 'there is no such reel log',
      hint: 'gatelight log add begins one; --log names another.',
    });
  return error instanceof InputError ? error : new InputError(fileProblem(file, error));
}

/** Passes chunks on until there are too many bytes. */
async function* bounded(chunks: AsyncIterable<Uint8Array>, file: string): AsyncGenerator<Uint8Array> {
  let total = 0;
  for await (const chunk of chunks) {
    total += chunk.length;
    if (total > largestLog) throw new InputError({ file, what: `is larger than ${largestLog} bytes` });
    yield chunk;
  }
}

async function collect(lines: AsyncIterable<string | undefined>, file: string): Promise<ReelLog> {
  const entries: ReelEntry[] = [];
  const damaged: DamagedLine[] = [];
  let line = 0;
  for await (const text of lines) {
    line++;
    if (text?.trim() === '') continue;
    const record =
      text === undefined ? { damage: `is longer than ${longestRecord} bytes` } : parseRecord(text);
    if ('entry' in record) entries.push(record.entry);
    else damaged.push({ line, what: record.damage });
    if (damaged.length > mostDamaged)
      throw new InputError({
        file,
        what: `is no reel log: ${damaged.length} lines are no records`,
        hint: 'Name another file with --log.',
      });
  }
  return { entries, damaged };
}

/**
 * Reads a reel log. Blank lines are skipped; a torn or foreign line is set aside with its number, and never costs
 * another line. A last line without its newline counts when it is whole.
 * @throws InputError when the file cannot be read, is larger than {@link largestLog} or is something else
 */
export async function readReelLog(file: string): Promise<ReelLog> {
  try {
    return await collect(linesOf(bounded(createReadStream(file), file)), file);
  } catch (error) {
    throw described(error, file);
  }
}

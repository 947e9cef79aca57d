import { z } from 'zod';
import type { Problem } from '../../errors/input-error.js';
import { InputError } from '../../errors/input-error.js';

const words = z.string().max(2000, 'is longer than 2000 characters');
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 in 64 lower-case hexadecimal digits');
const hashedFile = z.object({ file: words, sha256 });

const fields = {
  /** Version of the record's shape. */
  version: z.literal(1),
  /** The label on the can. */
  reel: words.min(1, 'is empty: the label on the can is needed'),
  /** When it was put on record, ISO 8601 with zone, e.g. 2026-03-01T19:30:00Z. */
  recordedAt: z.iso.datetime({ offset: true, error: 'is no time such as 2026-03-01T19:30:00Z' }),
  gauge: words.optional(),
  /** What the leader and the picture tell of the stock: kind, age, fading, damage. */
  stockNotes: words.optional(),
  /** Lamp and its setting, in words. */
  lamp: words.optional(),
  /** Exposure time, blades and speeds, in words. */
  shutter: words.optional(),
  /** The look: its name, its file where one was named, and the SHA-256 of its contents, as a LUT file states it. */
  look: z.object({ name: words.optional(), file: words.optional(), sha256 }).optional(),
  /** The LUT file that was loaded. */
  cube: hashedFile.optional(),
  stills: z.array(hashedFile).max(100).optional(),
  verify: z
    .object({
      /** True when the device did what the file says. */
      holds: z.boolean(),
      /** CIEDE2000. */
      mean: z.number(),
      p95: z.number(),
      /** The cause that fits best, when it does not hold. */
      cause: words.optional(),
    })
    .optional(),
  notes: words.optional(),
} as const;

const written = z.strictObject(fields);
const read = z.looseObject(fields);

/** Whether a text is a time as records hold it. */
export const isRecordTime = (text: string): boolean => fields.recordedAt.safeParse(text).success;

/** One reel on record. */
export type ReelEntry = z.infer<typeof written>;

/** The longest record, in bytes of UTF-8, its newline included. */
export const longestRecord = 64 * 1024;

/**
 * The record as one line of JSON, newline at the end.
 * @throws InputError for a field that is wrong, missing or unknown, and for a record longer than {@link longestRecord}
 */
export function recordLine(entry: ReelEntry): Uint8Array {
  const checked = written.safeParse(entry);
  if (!checked.success)
    throw new InputError(
      checked.error.issues.map((issue): Problem => ({
        field: issue.path.join('.') || 'the record',
        what: issue.message,
      })),
    );
  const line = Buffer.from(`${JSON.stringify(checked.data)}\n`, 'utf8');
  if (line.length > longestRecord)
    throw new InputError({
      what: `the record takes ${line.length} bytes`,
      allowed: `${longestRecord} bytes`,
    });
  return line;
}

/** A line of the log: a record, or what is wrong with it. Fields of later versions are kept. */
export function parseRecord(text: string): { readonly entry: ReelEntry } | { readonly damage: string } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { damage: 'is no whole record: torn in mid-write or changed by hand' };
  }
  const checked = read.safeParse(value);
  if (checked.success) return { entry: checked.data };
  const [{ code, path, message }] = checked.error.issues;
  if (path.length === 0) return { damage: 'is no reel record' };
  const kind = code === 'invalid_type' || code === 'invalid_value';
  return {
    damage: `is no reel record: ${path.join('.')}: ${kind ? 'is missing or of another kind' : message}`,
  };
}

/** How {@link recordLine} begins. */
const beginning = '{"version":';

/**
 * Whether a file may be a reel log, by its first {@link longestRecord} bytes: there is a record among them, or nothing
 * at all, or what a power loss leaves of a first record (its beginning, or zeros).
 */
export function beginsReelLog(head: string): boolean {
  const lines = head.split('\n').filter((line) => /[^\0\s]/.test(line));
  const [first = beginning, ...others] = lines;
  const torn = first.startsWith(beginning) || beginning.startsWith(first);
  return (torn && others.length === 0) || lines.some((line) => 'entry' in parseRecord(line));
}

import { stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { InputError } from '../../../errors/input-error.js';
import { checkTarget, type WriteOptions } from '../../../files/write-beside-then-rename.js';
import { nameInFolder } from '../../stills-in.js';

/** A still and the file that it becomes. */
export interface Frame {
  readonly still: string;
  readonly output: string;
}

export interface Plan {
  /** What is to be done, in order. */
  readonly frames: readonly Frame[];
  /** Frames that an earlier run has finished. */
  readonly finished: number;
  /** How many of these are older than the look. */
  readonly outdated: number;
}

/** When a file was last written, in milliseconds; undefined where there is none. */
const writtenAt = async (path: string): Promise<number | undefined> =>
  (await stat(path).catch(() => undefined))?.mtimeMs;

/** Whether what stands at a name may stay or be replaced: no source, folder or link. @throws InputError if not */
const requireFile = (path: string, { sources }: WriteOptions) => checkTarget(path, { force: true, sources });

function inTheWay(folder: string, count: number, first: string): InputError {
  const others = count === 1 ? '' : ` and ${count - 1} more`;
  return new InputError({
    file: folder,
    what: `holds ${basename(first)}${others} already`,
    hint: 'Use --resume to do the frames that are missing, --force to do all anew, or another folder.',
  });
}

/**
 * Which frames of a run are to be done, before any is.
 * @param resume leaves out those whose file is there: files are written whole or not at all, so it is finished
 * @throws InputError where files are in the way and neither `resume` nor `force` says what to do
 */
export async function planFrames(
  stills: readonly string[],
  folder: string,
  look: string,
  { resume, ...writing }: WriteOptions & { readonly resume: boolean },
): Promise<Plan> {
  const lookWritten = (await writtenAt(look)) ?? 0;
  const there: { readonly output: string; readonly written: number }[] = [];
  const missing: Frame[] = [];
  for (const still of stills) {
    const output = join(folder, nameInFolder(still));
    const written = await writtenAt(output);
    if (written === undefined) missing.push({ still, output });
    else {
      await requireFile(output, writing);
      there.push({ output, written });
      if (writing.force) missing.push({ still, output });
    }
  }
  if (there.length > 0 && !resume && !writing.force) throw inTheWay(folder, there.length, there[0].output);
  return {
    frames: missing,
    finished: resume ? there.length : 0,
    outdated: resume ? there.filter(({ written }) => written < lookWritten).length : 0,
  };
}

import { makeFolder } from '../../../files/make-folder.js';
import { exitCodes } from '../../exit-codes.js';
import { noteAll, printable, terminal } from '../../report.js';
import { applyFrames } from './apply-frames.js';
import type { Through } from './apply-still.js';
import { type Part, partOf } from './part.js';
import { planFrames } from './plan-frames.js';

export interface FolderOptions {
  /** The folder. */
  readonly output: string;
  /** Frames worked on at once. */
  readonly jobs: number;
  readonly part?: Part;
  readonly resume: boolean;
  readonly force: boolean;
}

function doneWords(done: number, asked: number, finished: number): string {
  if (asked > 0)
    return `${done} of ${asked} frames${finished === 0 ? '' : `, ${finished} were finished before`}`;
  return finished === 0
    ? 'no frame falls to this part'
    : `nothing left to do, all ${finished} frames were finished before`;
}

/** The frames of a reel, or a part of them, into a folder; the exit code says whether all could be done. */
export async function applyToFolder(
  look: string,
  stills: readonly string[],
  { output, jobs, part, resume, force }: FolderOptions,
  through: Through,
): Promise<void> {
  const share = part === undefined ? stills : partOf(stills, part);
  const { sources } = through;
  const { frames, finished, outdated } = await planFrames(share, output, look, { resume, force, sources });
  if (outdated > 0) noteAll(look, [`newer than ${outdated} of the finished frames, which stay as they are`]);
  await makeFolder(output);
  const done = await applyFrames(frames, jobs, through);
  terminal.result(
    `${printable(output)}: ${doneWords(done, frames.length, finished)}; ${printable(through.source.name)}.`,
  );
  if (done < frames.length) process.exitCode = done + finished === 0 ? exitCodes.unusable : exitCodes.notGood;
}

import { InputError } from '../../../errors/input-error.js';
import { writeSafely } from '../../../files/write-beside-then-rename.js';
import { noteAll, tellProblems, terminal } from '../../report.js';
import { openStillFor } from '../../still-for-look.js';
import { encodeThrough, type Through } from './apply-still.js';
import { sayingWhenInterrupted } from './interruption.js';
import type { Frame } from './plan-frames.js';
import { type Progress, startProgress } from './progress.js';
import { inTurn, turns } from './turns.js';

/** Runs `work`; a user's problem with one frame is told, and undefined returned. */
async function orTold<T>(progress: Progress, work: () => Promise<T>): Promise<T | undefined> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    progress.around(() => tellProblems(error));
    return undefined;
  }
}

/** Notes on frames, each told once: many thousand frames have the same. */
function notePad() {
  const pad = new Map<string, { file: string; others: number }>();
  return {
    add(file: string, notes: readonly string[]): void {
      for (const note of notes) {
        const known = pad.get(note);
        if (known === undefined) pad.set(note, { file, others: 0 });
        else known.others++;
      }
    },
    tell(): void {
      for (const [note, { file, others }] of pad)
        noteAll(others === 0 ? file : `${file} and ${others} more`, [note]);
    },
  };
}

/**
 * Every frame through a look, into its file. Frames are decoded, put through and encoded `jobs` at a time, begun in their
 * order; as many again may be on their way to the disk, which may be slow to say that it has them. So the memory taken does
 * not grow with their number. A frame that cannot be done is told and the rest go on; when one cannot be written, none is
 * begun any more, since the next would fare no better.
 * @returns how many were done
 */
export async function applyFrames(frames: readonly Frame[], jobs: number, through: Through): Promise<number> {
  const takeTurn = turns(jobs);
  const progress = startProgress(frames.length);
  const notes = notePad();
  let done = 0;
  let goesOn = true;

  async function encoded({ still: name, output }: Frame): Promise<Uint8Array[]> {
    const still = await openStillFor(through.source.signals.input, name, through);
    notes.add(name, still.notes);
    const encoded = await encodeThrough(still, output, through);
    notes.add(output, encoded.notes);
    return encoded.pieces;
  }

  async function written(pieces: Uint8Array[], { output }: Frame): Promise<void> {
    try {
      await writeSafely(output, pieces, through);
      done++;
    } catch (error) {
      const first = goesOn;
      goesOn = false;
      if (first) throw error;
    }
  }

  function said(): void {
    goesOn = false;
    progress.end();
    terminal.note(`Stopped: ${done} of ${frames.length} frames done. --resume goes on from here.`);
  }

  try {
    await sayingWhenInterrupted(said, () =>
      inTurn(
        frames,
        2 * jobs,
        async (frame) => {
          const pieces = await orTold(progress, () => takeTurn(() => encoded(frame)));
          if (pieces !== undefined && goesOn) await orTold(progress, () => written(pieces, frame));
          progress.count();
        },
        () => goesOn,
      ),
    );
  } finally {
    progress.end();
  }
  notes.tell();
  return done;
}

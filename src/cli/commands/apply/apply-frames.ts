import { InputError } from '../../../errors/input-error.js';
import { fillSafely } from '../../../files/write-beside-then-rename.js';
import { noteAll, tellProblems, terminal } from '../../report.js';
import { applyInto, type Through } from './apply-still.js';
import { sayingWhenInterrupted } from './interruption.js';
import type { Frame } from './plan-frames.js';
import { type Progress, startProgress } from './progress.js';
import { inTurn, turns } from './turns.js';

/** Runs `work`; a user's problem with one frame is told. */
async function orTold(progress: Progress, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    progress.around(() => tellProblems(error));
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

  async function encoded(file: string, { still, output }: Frame): Promise<void> {
    const { ofStill, ofOutput } = await applyInto(file, still, output, through);
    notes.add(still, ofStill);
    notes.add(output, ofOutput);
  }

  async function oneFrame(frame: Frame): Promise<void> {
    let reason: unknown;
    try {
      await fillSafely(frame.output, through, (temporary) =>
        takeTurn(() => encoded(temporary, frame)).catch((error: unknown) => {
          reason = error;
          throw error;
        }),
      );
      done++;
    } catch (error) {
      const ofStill = error === reason;
      const told = ofStill || goesOn;
      goesOn &&= ofStill;
      if (told) throw error;
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
          await orTold(progress, () => oneFrame(frame));
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

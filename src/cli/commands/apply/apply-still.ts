import { fillSafely } from '../../../files/write-beside-then-rename.js';
import { applyLookInPlace } from '../../../jobs/apply-look.js';
import type { ApplyEngine } from '../../../lut/engine/engine.js';
import { type Flip, flipPicture } from '../../../picture/orientation.js';
import type { ComingSource } from '../../load.js';
import type { ClipOptions } from '../../options.js';
import { noteAll } from '../../report.js';
import { openStillFor } from '../../still-for-look.js';

/** What every still goes through, and what may become of existing files. */
export interface Through extends ClipOptions {
  readonly source: ComingSource;
  readonly engine: ApplyEngine;
  readonly flip?: Flip;
  readonly force: boolean;
  /** Files that are never written over. */
  readonly sources: readonly string[];
}

/**
 * A still through a look, encoded as the name `output` asks.
 * @param file where it is written
 * @returns what is to be noted of the still, and of the file
 */
export async function applyInto(
  file: string,
  name: string,
  output: string,
  through: Through,
): Promise<{ ofStill: readonly string[]; ofOutput: readonly string[] }> {
  const { source, engine, flip } = through;
  const { encodeStillTo } = await import('../../../stills/write-still.js');
  const still = await openStillFor(source.signals.input, name, through);
  const seen = flip === undefined ? still.picture : flipPicture(still.picture, flip);
  const picture = applyLookInPlace(await source.lut, seen, engine);
  return { ofStill: still.notes, ofOutput: await encodeStillTo(file, output, picture, still) };
}

/** One still through a look, into a file. */
export async function applyStill(name: string, output: string, through: Through): Promise<void> {
  await fillSafely(output, through, async (temporary) => {
    const { ofStill, ofOutput } = await applyInto(temporary, name, output, through);
    noteAll(name, ofStill);
    noteAll(output, ofOutput);
  });
}

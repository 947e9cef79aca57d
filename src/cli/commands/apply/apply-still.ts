import { checkTarget, writeSafely } from '../../../files/write-beside-then-rename.js';
import { applyLookInPlace } from '../../../jobs/apply-look.js';
import type { ApplyEngine } from '../../../lut/engine/engine.js';
import { type Flip, flipPicture } from '../../../picture/orientation.js';
import type { Still } from '../../../stills/read-still.js';
import type { Source } from '../../load.js';
import type { ClipOptions } from '../../options.js';
import { noteAll } from '../../report.js';
import { openStillFor } from '../../still-for-look.js';

/** What every still goes through, and what may become of existing files. */
export interface Through extends ClipOptions {
  readonly source: Source;
  readonly engine: ApplyEngine;
  readonly flip?: Flip;
  readonly force: boolean;
  /** Files that are never written over. */
  readonly sources: readonly string[];
}

/** A still, which is used up, through a look, encoded as the name `output` asks; nothing is written. */
export async function encodeThrough(
  still: Still,
  output: string,
  { source, engine, flip }: Through,
): Promise<{ pieces: Uint8Array[]; notes: readonly string[] }> {
  const { encodeInPieces } = await import('../../../stills/write-still.js');
  const seen = flip === undefined ? still.picture : flipPicture(still.picture, flip);
  return encodeInPieces(output, applyLookInPlace(source.lut, seen, engine), still);
}

/** One still through a look, into a file. */
export async function applyStill(name: string, output: string, through: Through): Promise<void> {
  await checkTarget(output, through);
  const still = await openStillFor(through.source.signals.input, name, through);
  noteAll(name, still.notes);
  const { pieces, notes } = await encodeThrough(still, output, through);
  noteAll(output, notes);
  await writeSafely(output, pieces, through);
}

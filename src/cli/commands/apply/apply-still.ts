import { checkTarget, writeSafely } from '../../../files/write-beside-then-rename.js';
import { applyLook } from '../../../jobs/apply-look.js';
import type { ApplyEngine } from '../../../lut/engine/engine.js';
import { type Flip, flipPicture } from '../../../picture/orientation.js';
import type { Source } from '../../load.js';
import { openStill } from '../../open-still.js';
import type { ClipOptions } from '../../options.js';
import { noteAll } from '../../report.js';

/** What every still goes through, and what may become of existing files. */
export interface Through extends ClipOptions {
  readonly source: Source;
  readonly engine: ApplyEngine;
  readonly flip?: Flip;
  readonly force: boolean;
  /** Files that are never written over. */
  readonly sources: readonly string[];
}

/** One still through a look, into a file. */
export async function applyStill(still: string, output: string, through: Through): Promise<void> {
  const { source, engine, flip } = through;
  await checkTarget(output, through);
  const { encodeStill } = await import('../../../stills/write-still.js');
  const { picture, notes, profile } = await openStill(still, through);
  noteAll(still, notes);
  const upright = flip === undefined ? picture : flipPicture(picture, flip);
  const encoded = await encodeStill(output, applyLook(source.lut, upright, engine), profile);
  noteAll(output, encoded.notes);
  await writeSafely(output, encoded.bytes, through);
}

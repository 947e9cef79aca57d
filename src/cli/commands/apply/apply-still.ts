import { fillSafely } from '../../../files/write-beside-then-rename.js';
import { applyLookInPlace, applyLookToFloats } from '../../../jobs/apply-look.js';
import type { ApplyEngine } from '../../../lut/engine/engine.js';
import type { FloatPicture } from '../../../picture/float-picture.js';
import { type Flip, flipPicture } from '../../../picture/orientation.js';
import type { Picture } from '../../../picture/picture.js';
import type { Still } from '../../../stills/read-still.js';
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

const roundedFloats = 'its floating point values were rounded to 16 bits; TIFF keeps them';

/** Puts a still, which is used up, through a look and encodes it into a file. @returns notes on the file */
async function encodeThrough(
  file: string,
  still: Still,
  output: string,
  { source, engine, flip }: Through,
): Promise<readonly string[]> {
  const { encodeFloatsTo, encodeStillTo, kindOfName } = await import('../../../stills/write-still.js');
  const seen = <P extends Picture | FloatPicture>(picture: P) =>
    flip === undefined ? picture : flipPicture(picture, flip);
  const { floats, picture } = still;
  if (floats !== undefined && kindOfName(output) === 'tiff')
    return encodeFloatsTo(file, applyLookToFloats(await source.lut, seen(floats), engine), still);
  const after = applyLookInPlace(await source.lut, seen(picture), engine);
  const notes = await encodeStillTo(file, output, after, still);
  return floats === undefined ? notes : [roundedFloats, ...notes];
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
  const still = await openStillFor(through.source.signals.input, name, through);
  return { ofStill: still.notes, ofOutput: await encodeThrough(file, still, output, through) };
}

/** One still through a look, into a file. */
export async function applyStill(name: string, output: string, through: Through): Promise<void> {
  await fillSafely(output, through, async (temporary) => {
    const { ofStill, ofOutput } = await applyInto(temporary, name, output, through);
    noteAll(name, ofStill);
    noteAll(output, ofOutput);
  });
}

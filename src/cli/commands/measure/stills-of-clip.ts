import { join } from 'node:path';
import { fileStem, frameName } from '../../../clips/clip-name.js';
import { cutShort, type FrameTimes, frameTimes } from '../../../clips/frame-times.js';
import type { ProbedClip } from '../../../clips/probe.js';
import { readFrames } from '../../../clips/read-frames.js';
import { InputError } from '../../../errors/input-error.js';
import { makeFolder } from '../../../files/make-folder.js';
import { checkTarget, writeSafely } from '../../../files/write-beside-then-rename.js';
import { type FrameSample, passOver, passOverReasons } from '../../../measure/frame-choice/pass-over.js';
import { chooseSpread } from '../../../measure/frame-choice/spread.js';
import { frameDifference, frameTraits, type FrameTraits } from '../../../measure/frame-choice/traits.js';
import { openClip, openStill } from '../../open-still.js';
import type { ClipOptions } from '../../options.js';
import { noteAll, printable, terminal } from '../../report.js';
import { shellWord } from '../../shell-word.js';

/** Frames are looked at so wide: enough to see that one is blurred. */
const seenWidth = 384;

/** Places that are looked at for each still that is wanted. */
const placesForOne = 10;

function sizeOf({ width, height }: ProbedClip): { width: number; height: number } {
  const scale = Math.min(1, seenWidth / width);
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** A frame is held against its neighbours on either side. */
const fewestFrames = 3;

/** Three frames in a row from each place; of a short clip all frames, which is sooner done than finding many places. */
function placesOf(frames: number, count: number): { first: number; frames: number }[] {
  const places = placesForOne * count;
  if (frames <= 6 * places) return [{ first: 0, frames }];
  return Array.from({ length: places }, (_, i) => ({
    first: Math.min(frames - 3, Math.floor(((i + 0.5) * frames) / places)),
    frames: 3,
  }));
}

interface Seen {
  readonly index: number;
  readonly traits: FrameTraits;
}

/** Frames that have one on either side, with how they differ from them. */
function withNeighbours(run: readonly Seen[]): FrameSample[] {
  return run.slice(1, -1).map(({ index, traits }, i) => ({
    index,
    traits,
    fromBefore: frameDifference(traits, run[i].traits),
    fromAfter: frameDifference(traits, run[i + 2].traits),
  }));
}

async function samplesOf(clip: ProbedClip, times: FrameTimes, count: number): Promise<FrameSample[]> {
  const samples: FrameSample[] = [];
  const size = sizeOf(clip);
  for (const { first, frames } of placesOf(times.seconds.length, count)) {
    const run: Seen[] = [];
    for await (const { index, picture } of readFrames(clip, { first, count: frames, size }, times))
      run.push({ index, traits: frameTraits(picture) });
    samples.push(...(run.length < fewestFrames ? [] : withNeighbours(run)));
  }
  return samples;
}

function passedOverWords(passedOver: ReturnType<typeof passOver>['passedOver']): string {
  const parts = (Object.keys(passOverReasons) as (keyof typeof passOverReasons)[]).flatMap((reason) =>
    passedOver[reason] === undefined ? [] : [`${passedOver[reason]} ${passOverReasons[reason]}`],
  );
  return parts.length === 0 ? 'none' : parts.join(', ');
}

/**
 * Picks stills of a movie by itself: spread over the reel, different from each other, no leader, nothing torn, blurred or
 * burnt out.
 * @returns their names, which can be given back
 * @throws InputError when no frame will do
 */
export async function stillsOfClip(path: string, count: number, options: ClipOptions): Promise<string[]> {
  const clip = await openClip(path, options);
  const times = await frameTimes(clip);
  const short = cutShort(clip, times);
  if (short !== undefined) noteAll(path, [short]);
  const byHand = `Name frames by hand: ${frameName(path, Math.floor(times.seconds.length / 2))}`;
  if (times.seconds.length < fewestFrames)
    throw new InputError({
      file: path,
      what: `has ${times.seconds.length === 1 ? 'one frame' : `${times.seconds.length} frames`}, too few to pick from`,
      hint: byHand,
    });
  const samples = await samplesOf(clip, times, count);
  const { good, passedOver } = passOver(samples);
  if (good.length === 0)
    throw new InputError({
      file: path,
      what: `none of the ${samples.length} frames looked at will do (${passedOverWords(passedOver)})`,
      hint: byHand,
    });
  const chosen = chooseSpread(good, count, times.seconds.length);
  const names = chosen.map(({ index }) => frameName(path, index));
  terminal.note(`Looked at ${samples.length} frames; passed over: ${passedOverWords(passedOver)}.`);
  if (chosen.length < count) noteAll(path, [`only ${chosen.length} frames will do`]);
  terminal.note(`Took ${printable(names.map((name) => shellWord(name)).join(' '))}`);
  return names;
}

/** Writes the stills into a folder, 16 bits. @throws InputError where one is there already, unless `force` */
export async function keepStills(
  names: readonly string[],
  folder: string,
  options: ClipOptions & { readonly force: boolean },
): Promise<void> {
  await makeFolder(folder);
  const { encodeStill } = await import('../../../stills/write-still.js');
  const kept = names.map((name) => ({ name, path: join(folder, `${fileStem(name)}.png`) }));
  for (const { path } of kept) await checkTarget(path, options);
  for (const { name, path } of kept) {
    const { picture } = await openStill(name, options);
    await writeSafely(path, (await encodeStill(path, picture)).bytes, options);
  }
  terminal.note(`Wrote them to ${printable(folder)}, 16 bit PNG`);
}

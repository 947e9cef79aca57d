import { availableParallelism } from 'node:os';
import { containerOf, requireLosslessContainer } from '../../../clips/containers.js';
import { encoderOptions, requireEncoder, takesRgb } from '../../../clips/encoders.js';
import {
  cutShort,
  type FrameTimes,
  frameTimes,
  meanRate,
  unsteadyFrame,
} from '../../../clips/frame-times.js';
import type { ProbedClip } from '../../../clips/probe.js';
import { readPlanes, startDecoder } from '../../../clips/read-planes.js';
import type { Running } from '../../../clips/run.js';
import { findTools } from '../../../clips/tools.js';
import { everyFrameOnce } from '../../../clips/version.js';
import { type ClipWriter, writeClip } from '../../../clips/write-clip.js';
import { InputError } from '../../../errors/input-error.js';
import { checkTarget, writeBeside } from '../../../files/write-beside-then-rename.js';
import type { Flip } from '../../../picture/orientation.js';
import { type FramePool, startFramePool } from '../../engine/frame-pool.js';
import { tagsAgainst } from '../../colour-tags.js';
import { openClip } from '../../open-still.js';
import { noteAll } from '../../report.js';
import type { Through } from './apply-still.js';
import { type ClipDelivery, deliveryFor } from './clip-coding.js';
import { misreadIn } from './clip-misread.js';
import { startProgress } from './progress.js';

export interface ClipOutput {
  readonly path: string;
  readonly encoder: string;
  readonly encoderOptions?: string;
}

/** Lossless, an open standard (RFC 9043), and checked slice by slice when it is read. */
export const losslessEncoder = 'ffv1';

const unsteady = (path: string, frame: number, rate: string): InputError =>
  new InputError({
    file: path,
    what: `its frame rate varies: frame ${frame} is not where a steady rate would show it`,
    hint: `Give it a steady rate first, such as by ffmpeg -i IN -vf fps=${rate} -c:v ffv1 -c:a copy OUT.mkv`,
  });

/** @throws InputError for a clip whose frames cannot all be given back, each at its time */
function requireWhole(clip: ProbedClip, times: FrameTimes): void {
  const short = cutShort(clip, times);
  if (short !== undefined)
    throw new InputError({
      file: clip.path,
      what: short,
      hint: 'Copy it again, or cut it to what is whole.',
    });
  const frame = unsteadyFrame(times, clip.frameRate);
  if (frame !== undefined) throw unsteady(clip.path, frame, meanRate(times));
}

/** Decodes, applies and encodes, all at once; frames leave in the order they came in. @returns how many */
async function throughPool(
  clip: ProbedClip,
  decoder: Running,
  pool: FramePool,
  writer: ClipWriter,
  count: () => void,
): Promise<{ frames: number; complaints: string }> {
  let failure: unknown;
  let written = Promise.resolve();
  const next = async () => {
    const slot = await pool.takeSlot();
    reading.push(slot);
    return slot.source;
  };
  const reading: Awaited<ReturnType<FramePool['takeSlot']>>[] = [];
  const planes = readPlanes(clip, { buffer: next, decoder });
  for (;;) {
    const read = await planes.next();
    if (read.done === true) {
      await written;
      if (failure !== undefined) throw failure;
      return read.value;
    }
    if (failure !== undefined) {
      await planes.return({ frames: 0, complaints: '' });
      throw failure;
    }
    const slot = reading.shift()!;
    const applied = pool.apply(slot);
    written = Promise.all([applied, written])
      .then(() => (failure === undefined ? writer.write(slot.target) : undefined))
      .then(count)
      .catch((error: unknown) => void (failure ??= error))
      .finally(() => pool.freeSlot(slot));
  }
}

/** Tags are known to be kept there: what is written need not be looked into. */
const keepsTags = ({ path, encoder }: ClipOutput): boolean =>
  containerOf(path) === 'matroska' && encoder === losslessEncoder;

/** The field that is shown first: turned upside down, a frame of even height has its fields in each other's lines. */
function firstFieldOf({ firstField, height }: ProbedClip, flip: Flip | undefined): ProbedClip['firstField'] {
  const swapped = (flip === 'v' || flip === 'hv') && height % 2 === 0;
  if (firstField === undefined || !swapped) return firstField;
  return firstField === 'top' ? 'bottom' : 'top';
}

/** What is to be done, all of it known. */
interface Job {
  readonly clip: ProbedClip;
  readonly decoder: Running;
  readonly times: FrameTimes;
  readonly through: Through;
  readonly delivery: ClipDelivery;
  readonly output: ClipOutput;
  readonly encoderOptions: readonly string[];
}

async function write(
  { clip, decoder, times, through, delivery, output, encoderOptions }: Job,
  temporary: string,
): Promise<void> {
  const { source, flip } = through;
  const { input, output: gives } = source.signals;
  const from = { layout: clip.layout, matrix: clip.colour.matrix, range: clip.colour.range };
  const pool = startFramePool(availableParallelism(), {
    lut: await source.lut,
    way: { from, to: delivery.coding, takes: input.range, gives: gives.range, flip },
  });
  const { coding, format, tags } = delivery;
  const writer = await writeClip(
    {
      clip: { ...clip, firstField: firstFieldOf(clip, flip) },
      ...{ firstSeconds: times.firstSeconds, layout: coding.layout, format, tags },
      container: containerOf(output.path),
      encoder: output.encoder,
      encoderOptions,
    },
    output.path,
    temporary,
  );
  const expected = times.seconds.length;
  const progress = startProgress(expected);
  try {
    const { frames, complaints } = await throughPool(clip, decoder, pool, writer, progress.count);
    if (frames !== expected)
      throw new InputError({
        file: clip.path,
        what: `${frames} of its ${expected} frames could be decoded${complaints}`,
        hint: 'Copy it again, or cut it to what is whole.',
      });
    await writer.end();
    const misread = keepsTags(output) ? [] : await misreadIn(temporary, coding, clip.tools);
    progress.around(() => noteAll(output.path, misread));
    if (complaints !== '')
      progress.around(() => noteAll(clip.path, [`is damaged in places${complaints}: look at them`]));
  } finally {
    progress.end();
    writer.abandon();
    await pool.close();
  }
}

/**
 * A whole clip through a look: as many frames as it has, each at its time, with its sound.
 * @returns how many frames
 * @throws InputError with nothing written
 */
export async function applyClip(path: string, through: Through, output: ClipOutput): Promise<number> {
  containerOf(output.path);
  if (output.encoder === losslessEncoder) requireLosslessContainer(output.path);
  const options = encoderOptions(output.encoderOptions ?? '');
  await checkTarget(output.path, through);
  const tools = await findTools();
  // Asked at once: each takes as long to start as to answer.
  const asked = Promise.all([requireEncoder(tools, output.encoder), everyFrameOnce(tools.ffmpeg)]);
  asked.catch(() => undefined);
  const clip = await openClip(path, through);
  const against = tagsAgainst(clip.colour, through.source.signals.input);
  noteAll(path, against === undefined ? clip.notes : [...clip.notes, against]);
  await asked;
  const decoder = await startDecoder(clip);
  try {
    const times = await frameTimes(clip);
    requireWhole(clip, times);
    const delivery = deliveryFor(clip, through.source.signals.output, {
      lossless: output.encoder === losslessEncoder,
      rgb: clip.layout.kind === 'rgb' && (await takesRgb(clip.tools, output.encoder, options)),
    });
    noteAll(output.path, delivery.notes);
    const job = { clip, decoder, times, through, delivery, output, encoderOptions: options };
    await writeBeside(output.path, through, (temporary) => write(job, temporary));
    return times.seconds.length;
  } finally {
    decoder.kill();
  }
}

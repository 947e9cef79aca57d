import { InputError } from '../errors/input-error.js';
import { type PlaneLayout, planeBytes } from '../picture/planes.js';
import type { DecodingStart } from './frame-times.js';
import type { ProbedClip } from './probe.js';
import { brokenOff, fileUrl, inBrackets, onlyFiles, quietly, type Running, start } from './run.js';
import { everyFrameOnce } from './version.js';

export interface PlanesWanted {
  /** Where decoding begins; left out: at the beginning. */
  readonly start?: DecodingStart;
  /** How many frames at most. */
  readonly count?: number;
  /** Every so many frames one, from the first. */
  readonly every?: number;
  /** Filters that frames pass before they are written, as ffmpeg's -vf takes them. */
  readonly filters?: readonly string[];
  /** What a frame is after the filters; the clip's own layout when left out. */
  readonly layout?: PlaneLayout;
  /** Pixel format after the filters. */
  readonly format?: string;
  /** The array that the next frame is read into, once there is one; a new one when left out. */
  readonly buffer?: () => Promise<Uint8Array>;
  /** What {@link startDecoder} has started for just these planes; started when left out. */
  readonly decoder?: Running;
}

/** The other range would be put in where a filter changes the format: both ends say what the codes are. */
function formatFilter({ colour, pixelFormat }: ProbedClip, format: string): string[] {
  if (pixelFormat === format) return [];
  const range = colour.range === 'full' ? 'pc' : 'tv';
  return [`scale=in_range=${range}:out_range=${range}:flags=accurate_rnd+bitexact`, `format=${format}`];
}

/** Starts the decoder before anyone reads from it: it prepares itself, decodes a few frames and waits. */
export async function startDecoder(clip: ProbedClip, wanted: PlanesWanted = {}): Promise<Running> {
  const { start: { from, filter } = {}, count, every = 1, filters = [] } = wanted;
  const format = wanted.format ?? clip.asked.name;
  const chain = [
    ...(filter === undefined ? [] : [filter]),
    ...(every === 1 ? [] : [`select=not(mod(n\\,${every}))`]),
    ...filters,
    ...(filters.length === 0 ? formatFilter(clip, format) : []),
  ];
  const child = start(clip.tools.ffmpeg, [
    ...quietly,
    ...onlyFiles,
    ...(from === undefined ? [] : ['-ss', from.toFixed(6)]),
    ...['-i', fileUrl(clip.path), '-map', `0:${clip.stream}`],
    ...(await everyFrameOnce(clip.tools.ffmpeg)),
    ...(count === undefined ? [] : ['-frames:v', String(count)]),
    ...(chain.length === 0 ? [] : ['-vf', chain.join(',')]),
    ...['-f', 'rawvideo', '-pix_fmt', format, 'pipe:1'],
  ]);
  // When a program ends, Node lets flow away what it wrote and nobody listens for yet.
  child.stdout.on('readable', () => undefined);
  return child;
}

/** How a reading ended: frames given, and what the decoder complained about on the way. */
export interface PlanesRead {
  readonly frames: number;
  /** What the decoder complained about, a clause in brackets; empty when it was content. */
  readonly complaints: string;
}

/**
 * A clip's frames in planes, one after the other, as their bytes come: no more than one is held here, and the decoder waits
 * while the loop's body works. Leaving the loop ends the decoder.
 * @returns what was read, when the decoder has come to its end
 * @throws InputError when it cannot be started, is ended by others or gives half a frame
 */
export async function* readPlanes(
  clip: ProbedClip,
  wanted: PlanesWanted = {},
): AsyncGenerator<Uint8Array, PlanesRead, undefined> {
  const bytes = planeBytes(wanted.layout ?? clip.layout);
  const next = wanted.buffer ?? (async () => new Uint8Array(bytes));
  const child = wanted.decoder ?? (await startDecoder(clip, wanted));
  let frames = 0;
  let frame: Uint8Array | undefined;
  let filled = 0;
  try {
    for await (const chunk of child.stdout as AsyncIterable<Buffer>) {
      for (let at = 0; at < chunk.length;) {
        frame ??= await next();
        const taken = Math.min(bytes - filled, chunk.length - at);
        frame.set(chunk.subarray(at, at + taken), filled);
        at += taken;
        filled += taken;
        if (filled < bytes) continue;
        frames++;
        const whole = frame;
        [frame, filled] = [undefined, 0];
        yield whole;
      }
    }
    const ended = await child.ended;
    const complaints = inBrackets(child.complaints());
    const broken = brokenOff('ffmpeg', ended);
    if (broken !== undefined) throw broken;
    if (filled > 0 || (ended.code !== 0 && frames === 0))
      throw new InputError({
        file: clip.path,
        what: `cannot be decoded${complaints}`,
        hint: 'Was it recorded and copied to the end?',
      });
    return { frames, complaints };
  } finally {
    child.kill();
  }
}

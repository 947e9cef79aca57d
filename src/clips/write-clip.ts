import { InputError } from '../errors/input-error.js';
import type { PlaneLayout } from '../picture/planes.js';
import type { ProbedClip } from './probe.js';
import { brokenOff, fileUrl, inBrackets, onlyFiles, quietly, type Running, start } from './run.js';
import { everyFrameOnce } from './version.js';

/** What the frames to be written are, in ffmpeg's names (ITU-T H.273); undefined leaves a tag unsaid. */
export interface ColourTags {
  readonly primaries: string | undefined;
  readonly transfer: string | undefined;
  /** `rgb` for RGB. */
  readonly matrix: string;
  readonly range: 'full' | 'legal';
}

export interface ClipToWrite {
  /** The clip whose frames these were: sound, rate, time code, aspect and remarks come from it. */
  readonly clip: ProbedClip;
  /** When its first frame is shown, seconds from the file's beginning. */
  readonly firstSeconds: number;
  readonly layout: PlaneLayout;
  /** Pixel format of the frames, as `layout` says. */
  readonly format: string;
  readonly tags: ColourTags;
  readonly container: string;
  readonly encoder: string;
  readonly encoderOptions: readonly string[];
}

function tagOptions({ primaries, transfer, matrix, range }: ColourTags): string[] {
  return [
    ...['-color_primaries', primaries ?? 'unknown', '-color_trc', transfer ?? 'unknown'],
    ...['-colorspace', matrix, '-color_range', range === 'full' ? 'pc' : 'tv'],
  ];
}

/**
 * An encoder may take other pixel formats only: ffmpeg converts, and would put the other range in on the way. Then what a
 * frame is said to be: the shape of its pixels, and which of its fields comes first.
 */
function filtersFor({ clip: { sampleAspect, firstField }, tags }: ClipToWrite): string {
  const range = tags.range === 'full' ? 'pc' : 'tv';
  return [
    `scale=in_range=${range}:out_range=${range}:flags=accurate_rnd+bitexact`,
    ...(sampleAspect === undefined ? [] : [`setsar=${sampleAspect.join('/')}`]),
    ...(firstField === undefined ? [] : [`setfield=${firstField === 'top' ? 'tff' : 'bff'}`]),
  ].join(',');
}

async function argumentsFor(to: ClipToWrite, path: string): Promise<string[]> {
  const { clip, layout, tags } = to;
  const [frames, second] = clip.frameRate;
  return [
    ...quietly,
    ...['-y', '-progress', 'pipe:1'],
    // The clip first: it is looked into while the first frame is still on its way. Its pictures are not wanted, so nothing
    // is decoded of it unless its sound has to be understood.
    ...[...onlyFiles, ...(clip.soundStreams === 0 ? ['-nofind_stream_info'] : []), '-i', fileUrl(clip.path)],
    // Frames carry their tags from the beginning: some versions take them from the frames, some from the encoder.
    ...['-f', 'rawvideo', '-pix_fmt', to.format, '-video_size', `${layout.width}x${layout.height}`],
    ...['-framerate', `${frames}/${second}`, ...tagOptions(tags)],
    ...['-itsoffset', Math.max(0, to.firstSeconds).toFixed(6), '-i', 'pipe:0'],
    ...['-map', '1:v:0', '-map', '0:a?', '-c:a', 'copy', '-map_metadata', '0', '-map_chapters', '0'],
    ...['-vf', filtersFor(to)],
    ...['-c:v', to.encoder, ...to.encoderOptions, ...tagOptions(tags)],
    // Older versions write the file's head before they see a frame.
    ...(clip.firstField === undefined ? [] : ['-field_order', clip.firstField === 'top' ? 'tb' : 'bt']),
    ...(clip.timeCode === undefined ? [] : ['-metadata:s:v:0', `timecode=${clip.timeCode}`]),
    ...(await everyFrameOnce(clip.tools.ffmpeg)),
    // Older versions write the tags of colour there only when told to.
    ...(to.container === 'mov' || to.container === 'mp4' ? ['-movflags', '+write_colr'] : []),
    ...['-f', to.container, fileUrl(path)],
  ];
}

/** The frames that the encoder says it has written so far. */
function frameCounter({ stdout }: Running): () => number {
  let frames = 0;
  let rest = '';
  stdout.setEncoding('utf8').on('data', (text: string) => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) frames = Number(/^frame=\s*(\d+)/.exec(line)?.[1] ?? frames);
  });
  return () => frames;
}

/** A movie file that is being written. */
export interface ClipWriter {
  /** Resolves when the frame's bytes are no longer needed. @throws InputError when the encoder has ended */
  write(frame: Uint8Array): Promise<void>;
  /** No more frames: resolves when the file is whole. @throws InputError when it is not */
  end(): Promise<void>;
  /** Gives up at once. */
  abandon(): void;
}

/** What is wrong when an encoder has ended before it should, or with a failure. */
function failed(output: string, what: string, complaints: string): InputError {
  const full = /no space left/i.test(complaints);
  return new InputError({
    file: output,
    what: full ? 'cannot be written: the disk is full' : `${what}${inBrackets(complaints)}`,
    hint: full ? 'Free some space, or write to another disk.' : undefined,
  });
}

/**
 * Starts writing a movie file.
 * @param output as the user named it, for messages
 * @param path where it is written
 */
export async function writeClip(to: ClipToWrite, output: string, path: string): Promise<ClipWriter> {
  const child = start(to.clip.tools.ffmpeg, await argumentsFor(to, path), true);
  const counted = frameCounter(child);
  let given = 0;
  let over = false;
  const ended = child.ended.then((how) => {
    over = true;
    return how;
  });
  const broken = async (what: string) =>
    brokenOff('ffmpeg', await ended) ?? failed(output, what, child.complaints());
  return {
    async write(frame) {
      if (over) throw await broken('the encoder ended before the last frame');
      given++;
      const taken = new Promise((done) => child.stdin.write(frame, done));
      await Promise.race([taken, ended]);
      if (over) throw await broken('the encoder ended before the last frame');
    },
    async end() {
      child.stdin.end();
      const { code } = await ended;
      if (code !== 0) throw await broken('the encoder failed');
      if (counted() !== given)
        throw failed(output, `${counted()} of ${given} frames were written`, child.complaints());
    },
    abandon: () => child.kill(),
  };
}

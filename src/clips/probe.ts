import { stat } from 'node:fs/promises';
import { InputError } from '../errors/input-error.js';
import type { PlaneLayout, Siting } from '../picture/planes.js';
import { type ClipColour, type ColourChoice, colourOf } from './clip-colour.js';
import { type AskedFormat, askedFormat } from './pixel-formats.js';
import { fileUrl, inBrackets, onlyFiles, outputOf, quietly } from './run.js';
import { type FileFacts, probedFacts, type StreamFacts, tagOf } from './stream-facts.js';
import { findTools, type Tools } from './tools.js';

/** A movie file that was looked into: all that its frames are read by. */
export interface ProbedClip {
  /** As the user named it. */
  readonly path: string;
  readonly tools: Tools;
  /** The video stream that is read: the first. */
  readonly stream: number;
  readonly codec: string;
  /** Pixels, upright: a recording that says it is turned is read turned. */
  readonly width: number;
  readonly height: number;
  /** Width to height of a pixel; undefined where nothing is said, which means square. */
  readonly sampleAspect: readonly [number, number] | undefined;
  /** Frames a second, as a fraction: the average, which is every frame's own unless the rate varies. */
  readonly frameRate: readonly [number, number];
  /** The pixel format in the file, and how its frames are asked for. */
  readonly pixelFormat: string;
  readonly asked: AskedFormat;
  /** How a frame lies in memory. */
  readonly layout: PlaneLayout;
  readonly colour: ClipColour;
  /** Whether frames have the same times after seeking: in program streams few times are written, and the rest reckoned. */
  readonly seekable: boolean;
  /** Which of a frame's two fields is shown first, where they are different moments, as far as the file says. */
  readonly firstField: 'top' | 'bottom' | undefined;
  /** Time of the file's beginning on its own clock, seconds: what seeking counts from. */
  readonly startSeconds: number;
  /** Length of the video as the file states it, seconds; undefined where it does not. */
  readonly durationSeconds: number | undefined;
  /** Frames as the file states them; undefined where it does not. */
  readonly statedFrames: number | undefined;
  /** Time code of the first frame, as the file states it. */
  readonly timeCode: string | undefined;
  readonly soundStreams: number;
  /** What the user should know, each a clause without a full stop. */
  readonly notes: readonly string[];
}

const hopeless = 'Is it the right file? Was it copied to the end?';

/** ffprobe would take any text for a movie of letters. */
const notMovies = new Set(['tty', 'ansi']);

async function requireFile(path: string): Promise<void> {
  let about;
  try {
    about = await stat(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const what =
      code === 'ENOENT' || code === 'ENOTDIR'
        ? 'no such file'
        : `the system refuses it (${code ?? 'unknown'})`;
    throw new InputError({ file: path, what, hint: 'Check the name and the folder it is in.' });
  }
  if (about.isDirectory()) throw new InputError({ file: path, what: 'is a folder, not a movie' });
  if (!about.isFile()) throw new InputError({ file: path, what: 'is a device or a pipe, not a file' });
  if (about.size === 0) throw new InputError({ file: path, what: 'is empty', hint: hopeless });
}

async function factsOf(path: string, tools: Tools): Promise<FileFacts> {
  const { code, output, complaints } = await outputOf(tools.ffprobe, [
    ...quietly.filter((option) => option !== '-nostdin'),
    ...onlyFiles,
    ...['-of', 'json', '-show_format', '-show_streams'],
    fileUrl(path),
  ]);
  const refuse = () =>
    new InputError({
      file: path,
      what: `is not a movie that can be read${inBrackets(complaints)}`,
      hint: hopeless,
    });
  if (code !== 0) throw refuse();
  let parsed;
  try {
    parsed = probedFacts.safeParse(JSON.parse(output));
  } catch {
    throw refuse();
  }
  if (!parsed.success || notMovies.has(parsed.data.format.format_name ?? '')) throw refuse();
  return parsed.data;
}

/** Quarter turns clockwise that make the picture upright. */
function quarterTurns(facts: StreamFacts): number {
  const degrees =
    facts.side_data_list?.find(({ rotation }) => rotation !== undefined)?.rotation ??
    Number(tagOf(facts, 'rotate') ?? 0);
  return Math.round(degrees / 90);
}

/**
 * Where colour differences lie. Left unsaid: across on the first pixel, down midway in 4:2:0 (ITU-T H.264, annex E: type 0
 * is inferred).
 */
function sitingOf(location: string | undefined): { siteAcross: Siting; siteDown: Siting } {
  const at = (location ?? '').replace('unspecified', '');
  return {
    siteAcross: ['center', 'top', 'bottom'].includes(at) ? 'midway' : 'first',
    siteDown: at.startsWith('top') ? 'first' : 'midway',
  };
}

function layoutOf(facts: StreamFacts, asked: AskedFormat, [width, height]: readonly number[]): PlaneLayout {
  const { kind, bits, across, down } = asked;
  const turned = quarterTurns(facts) % 2 !== 0;
  return {
    width,
    height,
    kind,
    bits,
    across,
    down,
    // Turned by a quarter, what lay across lies down: ffmpeg turns the planes, and no one moves their sites.
    ...(turned ? { siteAcross: 'midway', siteDown: 'midway' } : sitingOf(facts.chroma_location)),
  };
}

function videoOf(path: string, facts: FileFacts): { video: StreamFacts; others: number } {
  const [video, ...others] = facts.streams.filter(
    ({ codec_type, disposition }) => codec_type === 'video' && disposition?.attached_pic !== 1,
  );
  if (video === undefined)
    throw new InputError({
      file: path,
      what: `has no video stream${facts.streams.some(({ codec_type }) => codec_type === 'audio') ? ', only sound' : ''}`,
    });
  return { video, others: others.length };
}

/** The largest frame, in pixels: as of a still. */
const mostPixels = 120_000_000;

function formatOf(path: string, { width, height, pix_fmt, codec_name }: StreamFacts): AskedFormat {
  if (codec_name === undefined || codec_name === 'unknown' || pix_fmt === undefined)
    throw new InputError({
      file: path,
      what: `its video cannot be decoded by this ffmpeg (${codec_name ?? 'unknown kind'})`,
      hint: 'A fuller or newer ffmpeg may know it.',
    });
  if (!(width! > 0 && height! > 0))
    throw new InputError({ file: path, what: 'its frames have no size', hint: hopeless });
  if (width! * height! > mostPixels)
    throw new InputError({
      file: path,
      what: `its frames have ${width} x ${height} pixels`,
      allowed: `${mostPixels / 1e6} megapixels at most`,
    });
  const asked = askedFormat(pix_fmt);
  if (asked === undefined)
    throw new InputError({
      file: path,
      what: `its pixel format ${pix_fmt} is not read here`,
      allowed: 'luma and colour differences 4:2:0, 4:2:2, 4:4:4, RGB and grey, 8 to 16 bits',
    });
  return asked;
}

function notesOf(asked: AskedFormat, colour: ClipColour, others: number, interlaced: boolean): string[] {
  return [
    ...(others > 0 ? [`has ${others + 1} video streams: the first is read`] : []),
    ...(colour.assumed === undefined ? [] : [colour.assumed]),
    ...(asked.alpha ? ['its alpha channel is left out'] : []),
    ...(interlaced ? ['is interlaced: its two fields are two moments, and are read as one picture'] : []),
  ];
}

/** By ffprobe's names; of interleaved fields, which ffmpeg writes as `tb` and `bt`, the first letter is what it means by them. */
const firstFields: Readonly<Partial<Record<string, 'top' | 'bottom'>>> = {
  ...{ tt: 'top', tb: 'top', bb: 'bottom', bt: 'bottom' },
};

/**
 * Looks into a movie file.
 * @param choice overrules matrix and range of its tags
 * @throws InputError without ffmpeg, and for what is no movie, has no video stream, or frames that cannot be read here
 */
export async function probeClip(path: string, choice: ColourChoice = {}, tools?: Tools): Promise<ProbedClip> {
  await requireFile(path);
  const found = tools ?? (await findTools());
  const facts = await factsOf(path, found);
  const { video, others } = videoOf(path, facts);
  const asked = formatOf(path, video);
  const colour = colourOf(path, video, asked, choice);
  const firstField = firstFields[video.field_order ?? ''];
  const turned = quarterTurns(video) % 2 !== 0;
  const size = [video.width!, video.height!];
  const [width, height] = turned ? size.reverse() : size;
  const [over, under] = video.sample_aspect_ratio ?? [1, 1];
  return {
    path,
    tools: found,
    stream: video.index,
    codec: video.codec_name ?? 'unknown',
    width,
    height,
    sampleAspect: video.sample_aspect_ratio && (turned ? [under, over] : [over, under]),
    frameRate: video.avg_frame_rate ?? video.r_frame_rate ?? [25, 1],
    pixelFormat: video.pix_fmt!,
    asked,
    layout: layoutOf(video, asked, [width, height]),
    colour,
    seekable: facts.format.format_name !== 'mpeg',
    firstField,
    startSeconds: facts.format.start_time ?? 0,
    durationSeconds: video.duration ?? clockSeconds(tagOf(video, 'duration')),
    statedFrames: video.nb_frames,
    timeCode: tagOf(video, 'timecode') ?? timeCodeOfOthers(facts),
    soundStreams: facts.streams.filter(({ codec_type }) => codec_type === 'audio').length,
    notes: notesOf(asked, colour, others, firstField !== undefined),
  };
}

/** Seconds of `00:00:08.040000000`, as one container states a stream's length. */
function clockSeconds(text = ''): number | undefined {
  const seconds = text.split(':').reduce((total, part) => 60 * total + Number(part), 0);
  return text !== '' && Number.isFinite(seconds) ? seconds : undefined;
}

/** Some containers keep the time code in a stream of its own, or say it of the whole file. */
function timeCodeOfOthers({ streams, format }: FileFacts): string | undefined {
  return (
    streams.map((stream) => tagOf(stream, 'timecode')).find((code) => code !== undefined) ??
    tagOf(format, 'timecode')
  );
}

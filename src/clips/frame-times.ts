import { createInterface } from 'node:readline';
import { InputError } from '../errors/input-error.js';
import type { ProbedClip } from './probe.js';
import { brokenOff, fileUrl, inBrackets, onlyFiles, start } from './run.js';

/** When a clip's frames are shown. */
export interface FrameTimes {
  /** Seconds from the first frame, in the order of showing; as many as there are frames. */
  readonly seconds: Float64Array;
  /** Time of the first frame on the file's own clock, counted from the file's beginning. */
  readonly firstSeconds: number;
  /**
   * Those of `seconds` whose frames can be decoded without others; undefined where the file does not say when each of its
   * frames is shown: there nothing can be sought.
   */
  readonly keys: Float64Array | undefined;
  /** Frames that the file holds for others to lean on, and does not show: of a movie that was trimmed. */
  readonly hidden: number;
}

/** Packets may come in another order than their pictures are shown in, by no more than this. */
const reorderedPackets = 64;

/** A frame of a steady rate lies this near its place, as a share of a frame: containers round times to 1 ms or coarser. */
const steadyShare = 0.3;

/** A packet's times on the file's clock, NaN where they are not said. */
interface Packet {
  readonly shown: number;
  readonly decoded: number;
  readonly key: boolean;
  /** To be decoded but not shown. */
  readonly hidden: boolean;
}

async function packetsOf(clip: ProbedClip, upTo: number): Promise<Packet[]> {
  const interval = Number.isFinite(upTo) ? ['-read_intervals', `%+#${upTo + 1 + reorderedPackets}`] : [];
  const child = start(clip.tools.ffprobe, [
    ...['-hide_banner', '-v', 'error', ...onlyFiles],
    ...['-select_streams', String(clip.stream), ...interval],
    ...['-show_entries', 'packet=pts_time,dts_time,flags', '-of', 'csv=p=0'],
    fileUrl(clip.path),
  ]);
  const packets: Packet[] = [];
  for await (const line of createInterface({ input: child.stdout, crlfDelay: Infinity })) {
    const [shown, decoded, flags] = line.split(',');
    if (flags === undefined) continue;
    const [key, hidden] = [flags.includes('K'), flags.includes('D')];
    packets.push({ shown: Number(shown), decoded: Number(decoded), key, hidden });
  }
  const broken = brokenOff('ffprobe', await child.ended);
  if (broken !== undefined) throw broken;
  if (packets.every(({ hidden }) => hidden))
    throw new InputError({
      file: clip.path,
      what: `holds no frames${inBrackets(child.complaints())}`,
      hint: 'Was it recorded and copied to the end?',
    });
  return packets;
}

const inOrder = (values: number[]): number[] => values.sort((a, b) => a - b);

/** Times at which frames are shown, as far as they are said: else as frames are decoded, steadily; else as the rate says. */
function timesOf(packets: readonly Packet[], [frames, second]: readonly [number, number]): number[] {
  for (const which of ['shown', 'decoded'] as const) {
    const times = packets.map((packet) => packet[which]);
    if (times.every(Number.isFinite)) return inOrder(times);
  }
  return packets.map((_, i) => (i * second) / frames);
}

/**
 * Counts a clip's frames and tells when each is shown, without decoding them.
 * @param upTo the last frame of interest: a long file is read no further than needed
 * @throws InputError when there is none
 */
export async function frameTimes(clip: ProbedClip, upTo = Infinity): Promise<FrameTimes> {
  const all = await packetsOf(clip, upTo);
  const packets = all.filter(({ hidden }) => !hidden);
  const times = timesOf(packets, clip.frameRate);
  const [first] = times;
  const sinceFirst = (time: number) => time - first;
  const sought = clip.seekable && packets.every(({ shown }) => Number.isFinite(shown));
  const keys = packets.filter(({ key }) => key).map(({ shown }) => shown);
  return {
    seconds: Float64Array.from(times, sinceFirst),
    firstSeconds: first - clip.startSeconds,
    keys: sought ? Float64Array.from(inOrder(keys), sinceFirst) : undefined,
    hidden: all.length - packets.length,
  };
}

/** The first frame that is not where the rate would show it; undefined where frames follow each other steadily. */
export function unsteadyFrame(
  { seconds }: FrameTimes,
  [frames, second]: readonly [number, number],
): number | undefined {
  const found = seconds.findIndex((time, i) => Math.abs((time * frames) / second - i) > steadyShare);
  return found < 0 ? undefined : found;
}

/** Mean frames a second, as text to at most three decimals. @param times of two frames or more that are not shown at once */
export const meanRate = ({ seconds }: FrameTimes): string =>
  String(Number(((seconds.length - 1) / seconds[seconds.length - 1]).toFixed(3)));

/** Frames by which a file may state more than it has: lengths are rounded, and some count from 0 to the last frame's end. */
const statedTooMuch = 2;

/** What a file lacks of what it states, a clause; undefined where it is whole. */
export function cutShort(
  clip: ProbedClip,
  { seconds, firstSeconds, hidden }: FrameTimes,
): string | undefined {
  const frames = seconds.length;
  const [rate, per] = clip.frameRate;
  // A recorder that left frames out in the middle counts their places too: what is there still reaches to the end.
  const places = Math.round((seconds[frames - 1] * rate) / per) + 1;
  if (clip.statedFrames !== undefined && clip.statedFrames > Math.max(frames, places) + hidden)
    return `is cut short: it states ${clip.statedFrames} frames and holds ${frames}`;
  const stated = clip.durationSeconds;
  const held = firstSeconds + seconds[frames - 1] + per / rate;
  if (stated === undefined || stated <= held + (statedTooMuch * per) / rate) return undefined;
  return `is cut short: it states ${stated.toFixed(2)} s and its frames end at ${held.toFixed(2)} s`;
}

/** The frame on the screen at a time, counted from the first. */
export function frameAt({ seconds }: FrameTimes, time: number): number {
  let frame = 0;
  // Times are rounded in the file; a person's time means the frame that begins there.
  while (frame + 1 < seconds.length && seconds[frame + 1] <= time + 0.0005) frame++;
  return frame;
}

/** How decoding begins so that a frame is the next to come. */
export interface DecodingStart {
  /** Where to seek, seconds from the file's beginning; left out: at the beginning. */
  readonly from?: number;
  /** A filter that lets pass the frame and all after it; left out: seeking alone is exact. */
  readonly filter?: string;
}

/**
 * Seeking in a file whose frames lean on one another may come out seconds late: so long before the frame that the next one
 * leans on, decoding begins.
 */
const lateSeconds = 1;

/** How to begin decoding with a frame. */
export function startAt({ seconds, firstSeconds, keys }: FrameTimes, frame: number): DecodingStart {
  if (frame === 0) return {};
  if (keys === undefined) return { filter: `select=gte(n\\,${frame})` };
  // Midway between it and the one before: times are rounded.
  const begins = firstSeconds + (seconds[frame] + seconds[frame - 1]) / 2;
  if (keys.length === seconds.length) return { from: begins };
  const key = keys.findLast((time) => time <= seconds[frame]) ?? 0;
  const from = Math.max(0, firstSeconds + key - lateSeconds);
  return { ...(from > 0 ? { from } : {}), filter: `select=gte(t\\,${(begins - from).toFixed(6)})` };
}

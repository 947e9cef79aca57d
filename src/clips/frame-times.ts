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
}

/** Packets may come in another order than their pictures are shown in, by no more than this. */
const reorderedPackets = 64;

/** A frame of a steady rate lies this near its place, as a share of a frame: containers round times to 1 ms or coarser. */
const steadyShare = 0.3;

async function packetTimes(clip: ProbedClip, upTo: number): Promise<number[]> {
  const interval = Number.isFinite(upTo) ? ['-read_intervals', `%+#${upTo + 1 + reorderedPackets}`] : [];
  const child = start(clip.tools.ffprobe, [
    ...['-hide_banner', '-v', 'error', ...onlyFiles],
    ...['-select_streams', String(clip.stream), ...interval],
    ...['-show_entries', 'packet=pts_time,dts_time,flags', '-of', 'csv=p=0'],
    fileUrl(clip.path),
  ]);
  const times: number[] = [];
  let timeless = false;
  for await (const line of createInterface({ input: child.stdout, crlfDelay: Infinity })) {
    const [shown, decoded, flags] = line.split(',');
    if (flags === undefined || flags.includes('D')) continue; // to be decoded but not shown
    const time = Number(shown === 'N/A' ? decoded : shown);
    if (!Number.isFinite(time)) timeless = true;
    times.push(time);
  }
  const broken = brokenOff('ffprobe', await child.ended);
  if (broken !== undefined) throw broken;
  if (times.length === 0)
    throw new InputError({
      file: clip.path,
      what: `holds no frames${inBrackets(child.complaints())}`,
      hint: 'Was it recorded and copied to the end?',
    });
  const [frames, second] = clip.frameRate;
  return timeless ? times.map((_, i) => (i * second) / frames) : times.sort((a, b) => a - b);
}

/**
 * Counts a clip's frames and tells when each is shown, without decoding them.
 * @param upTo the last frame of interest: a long file is read no further than needed
 * @throws InputError when there is none
 */
export async function frameTimes(clip: ProbedClip, upTo = Infinity): Promise<FrameTimes> {
  const times = await packetTimes(clip, upTo);
  const [first] = times;
  return {
    seconds: Float64Array.from(times, (time) => time - first),
    firstSeconds: first - clip.startSeconds,
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

/** Frames by which a file may state more than it has: lengths are rounded, and some count from 0 to the last frame's end. */
const statedTooMuch = 2;

/** What a file lacks of what it states, a clause; undefined where it is whole. */
export function cutShort(clip: ProbedClip, { seconds, firstSeconds }: FrameTimes): string | undefined {
  const frames = seconds.length;
  const [rate, per] = clip.frameRate;
  if (clip.statedFrames !== undefined && clip.statedFrames > frames)
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

/** Where to seek so that `frame` is the next to come: midway between it and the one before, seconds from the file's beginning. */
export function seekSeconds({ seconds, firstSeconds }: FrameTimes, frame: number): number {
  return frame === 0 ? 0 : firstSeconds + (seconds[frame] + seconds[frame - 1]) / 2;
}

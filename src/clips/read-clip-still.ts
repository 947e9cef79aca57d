import { InputError } from '../errors/input-error.js';
import type { Picture } from '../picture/picture.js';
import type { FramePlace } from './clip-name.js';
import { frameAt, type FrameTimes, frameTimes } from './frame-times.js';
import type { ProbedClip } from './probe.js';
import { readFrames } from './read-frames.js';

export interface ClipStill {
  readonly picture: Picture;
  /** Number of the frame, counted from 0. */
  readonly frame: number;
  readonly notes: readonly string[];
}

/** Frames that surely reach up to a time, as a file's rate may be a little off. */
const framesUpTo = (clip: ProbedClip, seconds: number): number =>
  Math.ceil(((seconds * clip.frameRate[0]) / clip.frameRate[1]) * 1.5) + 100;

/** Cut off, not rounded: a time that is named can be asked for. */
function clockTime(seconds: number): string {
  const hundredths = Math.floor(100 * seconds + 1e-6);
  const [minutes, rest] = [Math.floor(hundredths / 6000), (hundredths % 6000) / 100];
  return `${minutes}:${rest < 10 ? '0' : ''}${rest.toFixed(2)}`;
}

function pastTheEnd(clip: ProbedClip, { seconds }: FrameTimes, place: FramePlace): InputError {
  const frames = seconds.length;
  const given = 'frame' in place ? `frame ${place.frame}` : clockTime(place.seconds);
  return new InputError({
    file: clip.path,
    what: `${given} is past its end`,
    allowed: `frames 0 to ${frames - 1}, times up to ${clockTime(seconds[frames - 1])}`,
  });
}

async function frameOf(clip: ProbedClip, place: FramePlace): Promise<{ frame: number; times: FrameTimes }> {
  const upTo = 'frame' in place ? place.frame : framesUpTo(clip, place.seconds);
  let times = await frameTimes(clip, upTo);
  // A rate that varies widely may need more.
  if (
    'seconds' in place &&
    times.seconds.length > upTo &&
    times.seconds[times.seconds.length - 1] < place.seconds
  )
    times = await frameTimes(clip);
  const { seconds } = times;
  const frames = seconds.length;
  const lengthOfLast = frames > 1 ? seconds[frames - 1] - seconds[frames - 2] : 1;
  const beyond =
    'frame' in place ? place.frame >= frames : place.seconds >= seconds[frames - 1] + lengthOfLast;
  if (beyond) throw pastTheEnd(clip, times, place);
  return { frame: 'frame' in place ? place.frame : frameAt(times, place.seconds), times };
}

/**
 * One frame of a clip as a still: red, green and blue of 16 bits, full range.
 * @throws InputError for a place past the end, and where the frame cannot be decoded
 */
export async function readClipStill(clip: ProbedClip, place: FramePlace): Promise<ClipStill> {
  const { frame, times } = await frameOf(clip, place);
  const frames = readFrames(clip, { first: frame, count: 1 }, times);
  const { done, value } = await frames.next();
  if (done === true)
    throw new InputError({
      file: clip.path,
      what: `frame ${frame} cannot be decoded`,
      hint: 'The file may be cut short there: try an earlier one.',
    });
  const ended = await frames.next();
  const complaints = ended.done === true ? ended.value : '';
  // It may have been about a frame before this one: decoding begins where the container can be entered.
  const note = `something is damaged at frame ${frame} or shortly before${complaints}: look at it`;
  return {
    picture: value.picture,
    frame,
    notes: complaints === '' ? clip.notes : [...clip.notes, note],
  };
}

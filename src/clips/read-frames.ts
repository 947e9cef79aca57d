import { makePicture, type Picture } from '../picture/picture.js';
import { frameToGrey, frameToRgb } from '../picture/planar-codec.js';
import type { PlaneLayout } from '../picture/planes.js';
import { type FrameTimes, frameTimes, startAt } from './frame-times.js';
import type { ProbedClip } from './probe.js';
import { type PlanesWanted, readPlanes } from './read-planes.js';

export interface ReadFramesOptions {
  /** The first frame, counted from 0; 0 when left out. */
  readonly first?: number;
  /** How many frames at most; up to the end when left out. */
  readonly count?: number;
  /** Every so many frames one is given: 3 gives first, first + 3, ...; 1 when left out. */
  readonly every?: number;
  /** `rgb48`: red, green, blue; `gray16`: luma alone (of RGB, its BT.709 luma). 16 bits, full range. */
  readonly pixels?: 'rgb48' | 'gray16';
  /** Frames are made so large, by averaging, whatever their shape; their own size when left out. */
  readonly size?: { readonly width: number; readonly height: number };
}

export interface ClipFrame {
  /** Number of the frame in the clip, counted from 0. */
  readonly index: number;
  /** When it is shown, seconds from the clip's first frame. */
  readonly seconds: number;
  /** 16 bits; 3 channels, or 1 for `gray16`. Its data is not used again: it may be kept. */
  readonly picture: Picture;
}

/** The clip's frames after `size`, and whether only luma is asked for. */
function wantedPlanes(
  clip: ProbedClip,
  { pixels, size }: ReadFramesOptions,
): PlanesWanted & { layout: PlaneLayout } {
  const { asked, colour } = clip;
  const lumaOnly = pixels === 'gray16' && asked.kind !== 'rgb';
  const range = colour.range === 'full' ? 'pc' : 'tv';
  const scale = size === undefined ? '' : `${size.width}:${size.height}:`;
  const layout = { ...clip.layout, ...size, ...(lumaOnly ? { kind: 'grey' as const } : {}) };
  if (size === undefined && !lumaOnly) return { layout };
  const keepRange = `in_range=${range}:out_range=${range}:flags=area+accurate_rnd+bitexact`;
  const format = lumaOnly ? `gray${asked.bits > 8 ? `${asked.bits}le` : ''}` : asked.name;
  const filters = [
    `scale=${scale}${keepRange}`,
    `format=${asked.name}`,
    ...(lumaOnly && asked.kind === 'luma-chroma' ? ['extractplanes=y'] : []),
  ];
  return { layout, format, filters };
}

/** Luma of RGB, ITU-R BT.709-6, 3.2. */
function lumaOfRgb(rgb: Uint16Array): Uint16Array {
  const luma = new Uint16Array(rgb.length / 3);
  for (let i = 0, from = 0; i < luma.length; i++, from += 3)
    luma[i] = Math.round(0.2126 * rgb[from] + 0.7152 * rgb[from + 1] + 0.0722 * rgb[from + 2]);
  return luma;
}

function toPicture(clip: ProbedClip, layout: PlaneLayout, grey: boolean, bytes: Uint8Array): Picture {
  const { width, height } = layout;
  const coding = { layout, matrix: clip.colour.matrix, range: clip.colour.range };
  const rgb = () => {
    const codes = new Uint16Array(3 * width * height);
    frameToRgb(coding, bytes, codes);
    return codes;
  };
  if (!grey) return makePicture(width, height, { channels: 3, bits: 16 }, rgb());
  if (layout.kind === 'rgb') return makePicture(width, height, { channels: 1, bits: 16 }, lumaOfRgb(rgb()));
  const codes = new Uint16Array(width * height);
  frameToGrey(coding, bytes, codes);
  return makePicture(width, height, { channels: 1, bits: 16 }, codes);
}

/**
 * A clip's frames one after the other, as pictures of 16 bits. One frame is held at a time and the decoder waits while the
 * loop's body works; leaving the loop early ends the decoder. A clip that is cut short gives the frames it has.
 * @param times when its frames are shown, if that is known already: else the file is gone through once for it
 * @returns what the decoder complained about on the way, in brackets after a space; empty when it did not
 * @throws InputError in one plain sentence when the clip has no frames or cannot be decoded; RangeError for options that
 * are no counts
 */
export async function* readFrames(
  clip: ProbedClip,
  options: ReadFramesOptions = {},
  times?: FrameTimes,
): AsyncGenerator<ClipFrame, string, undefined> {
  const { first = 0, count, every = 1 } = options;
  if (!(first >= 0 && every >= 1 && (count === undefined || count >= 1)))
    throw new RangeError('frames are counted from 0, and given one by one or in steps of 1 or more');
  const last = count === undefined ? Infinity : first + (count - 1) * every;
  const known = times ?? (await frameTimes(clip, last));
  const { seconds } = known;
  if (first >= seconds.length) return '';
  const planes = wantedPlanes(clip, options);
  const read = readPlanes(clip, { ...planes, start: startAt(known, first), count, every });
  try {
    for (let index = first; ; index += every) {
      const { done, value } = await read.next();
      if (done === true) return value.complaints;
      const picture = toPicture(clip, planes.layout, options.pixels === 'gray16', value);
      // More frames than packets: the rate says when the rest are shown.
      const time = seconds[index] ?? (index * clip.frameRate[1]) / clip.frameRate[0];
      yield { index, seconds: time, picture };
    }
  } finally {
    await read.return({ frames: 0, complaints: '' });
  }
}

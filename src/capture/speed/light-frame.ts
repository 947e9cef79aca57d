// A test recording, frame by frame: how its light pulses and how film frames fall on its frames. Knows small pictures of
// linear light and time; knows no files, no codes and no way to get frames.

import type { Picture } from '../../picture/picture.js';

/** One frame of a recording, small: linear light row by row, 1 = the end of the camera's scale. */
export interface LightFrame {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/**
 * Pictures as frames of light. Their codes may have been averaged while they were made small: a gain of light is a factor
 * on all codes of a power law and an addition to all codes of a logarithm, so it comes through an average of either as it
 * was.
 * @param pictures grey, 16 bits, full range @param decode signal 0..1 to linear light
 */
export async function* lightFrames(
  pictures: AsyncIterable<{ readonly picture: Picture }>,
  decode: (signal: number) => number,
): AsyncGenerator<LightFrame, void, undefined> {
  const table = new Float32Array(65536).map((_, code) => Math.max(0, decode(code / 65535)));
  for await (const { picture } of pictures) {
    const { width, height, data } = picture;
    yield { width, height, light: Float32Array.from(data, (code) => table[code]) };
  }
}

/** Pixels a side of a cell. A cell's mean is little moved by grain, weave and noise. */
const cellSide = 6;

/** From here on a pixel may have ended: its light is not followed. */
const endOfScale = 0.97;

/** A frame with what the comparison with its neighbours needs. */
export interface SeenFrame extends LightFrame {
  /** Mean light. */
  readonly mean: number;
  /** Mean light of each cell; NaN where a pixel has ended at the top. */
  readonly cells: Float64Array;
}

/** Mean light of each cell. */
export function cellMeans({ width, height, light }: LightFrame): Float64Array {
  const across = Math.max(1, Math.floor(width / cellSide));
  const down = Math.max(1, Math.floor(height / cellSide));
  const sums = new Float64Array(across * down);
  const counts = new Float64Array(across * down);
  for (let y = 0, i = 0; y < height; y++) {
    const row = Math.min(down - 1, Math.floor(y / cellSide)) * across;
    for (let x = 0; x < width; x++, i++) {
      const cell = row + Math.min(across - 1, Math.floor(x / cellSide));
      counts[cell]++;
      sums[cell] += light[i] < endOfScale ? light[i] : NaN;
    }
  }
  return sums.map((sum, cell) => sum / counts[cell]);
}

export function seeFrame(frame: LightFrame): SeenFrame {
  const { light } = frame;
  return {
    ...frame,
    mean: light.reduce((sum, value) => sum + value, 0) / light.length,
    cells: cellMeans(frame),
  };
}

import type { RawFrames } from './tools.js';

export const numberedSize = { width: 48, height: 32 };

/** Luma of a frame, 8 bits legal: every frame has one of its own, none clipped. */
export const lumaOfNumber = (frame: number): number => 20 + 2 * frame;

/** Frames each of one grey, so that a frame tells its number. Up to 100 of them. */
export function numberedFrames(count: number, { width, height } = numberedSize): RawFrames {
  const chroma = 2 * Math.ceil(width / 2) * Math.ceil(height / 2);
  const frames = Array.from({ length: count }, (_, frame) => {
    const bytes = new Uint8Array(width * height + chroma).fill(128);
    return bytes.fill(lumaOfNumber(frame), 0, width * height);
  });
  return { format: 'yuv420p', width, height, bytes: Buffer.concat(frames) };
}

/** The number that a picture of 16 bits, full range, tells. */
export function numberIn(data: ArrayLike<number>): number {
  return ((data[0] / 65535) * 219 + 16 - 20) / 2;
}

import type { Samples } from '../apply-codes.js';
import type { RunKind, SimdModule } from './simd-module.js';

/** How a picture is run through the LUT that lies prepared. */
export interface PreparedRun {
  readonly kind: RunKind;
  /** Address of the first thread's area; the others' follow, `areaBytes` each. */
  readonly area: number;
}

/** Pixels that pass through an area at once: few enough that they stay in the second cache on the way. */
const areaPixels = 16384;

/** Bytes of the largest pixel, four floats, and what a run reads behind the last one. */
const widestPixel = 16;
const readBehind = 128;

const blockBytes = areaPixels * widestPixel + readBehind;

/** Bytes of an area: a thread's own memory, with room to work in, for pixels coming and pixels going. */
export const areaBytes = (module: SimdModule): number => module.workBytes.value + 2 * blockBytes;

type SamplesConstructor = new (buffer: ArrayBufferLike, byteOffset: number, length: number) => Samples;

/**
 * Puts part of a picture through the lattice that was prepared.
 * @param run its area must be the thread's own
 * @param first, end pixels from the first up to the last but not with it
 */
export function runArea(
  module: SimdModule,
  run: PreparedRun,
  source: Samples,
  target: Samples,
  channels: 3 | 4,
  first = 0,
  end = source.length / channels,
): void {
  const { kind, area } = run;
  const from = area + module.workBytes.value;
  const to = from + blockBytes;
  const Depth = source.constructor as SamplesConstructor;
  const coming = new Depth(module.memory.buffer, from, areaPixels * channels);
  const going = new Depth(module.memory.buffer, to, areaPixels * channels);
  for (let pixel = first; pixel < end; pixel += areaPixels) {
    const count = Math.min(areaPixels, end - pixel);
    const at = pixel * channels;
    coming.set(source.subarray(at, at + count * channels));
    module.run(module[kind].value, from, to, count, channels, area);
    target.set(count < areaPixels ? going.subarray(0, count * channels) : going, at);
  }
}

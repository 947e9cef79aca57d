import type { SignalRange } from '../../colour/signal-range.js';
import type { Flip } from '../orientation.js';
import type { FrameCoding } from '../planar-codec.js';
import type { LineModule } from './line-module.js';
import { addressesFrom } from './places.js';
import { lineReader } from './read-lines.js';
import { lineWriter } from './write-lines.js';

/** How frames come and go. */
export interface FrameWay {
  readonly from: FrameCoding;
  readonly to: FrameCoding;
  /** Range of red, green and blue: as they are handed over, and as they are taken back. */
  readonly takes: SignalRange;
  readonly gives: SignalRange;
  readonly flip: Flip | undefined;
}

/** What is done to a line: `width` pixels of r g b, 16 bits each, from one address to another. */
export type LineWork = (from: number, to: number, width: number) => void;

/** Memory that the module works in; where something of it lies is an address. */
interface LineMemory {
  readonly module: LineModule;
  readonly buffer: ArrayBufferLike;
  /** From here on memory is free to work in, as much as {@link frameWorkBytes} says. */
  readonly start: number;
}

/** Lines that are worked with at most, the widest of them pixels of r g b. */
const mostLines = 36;

/** Bytes of memory that a thread works in. */
export function frameWorkBytes({ lineRoom }: LineModule, { from }: FrameWay): number {
  const { end, take } = addressesFrom(0, lineRoom.value);
  take(6 * from.layout.width);
  return mostLines * end();
}

/**
 * Puts frames of one kind through some work on their red, green and blue: line by line, so that a line stays in the first
 * cache on its way. Up to `lineRoom` bytes behind a frame are read too.
 * @returns what does it to the frame at one address, and leaves the result at another
 */
export function frameThrough(
  { module, buffer, start }: LineMemory,
  { from, to, takes, gives, flip }: FrameWay,
  work: LineWork,
): (source: number, target: number) => void {
  const { width, height } = from.layout;
  const addresses = addressesFrom(start, module.lineRoom.value);
  const [coming, going] = [addresses.take(6 * width), addresses.take(6 * width)];
  const read = lineReader(module, buffer, from, takes, addresses);
  const write = lineWriter(module, buffer, to, gives, addresses);
  const [mirrored, turned] = [flip === 'h' || flip === 'hv', flip === 'v' || flip === 'hv'];
  return (source, target) => {
    for (let y = 0; y < height; y++) {
      read(source, turned ? height - 1 - y : y, coming);
      if (mirrored) module.mirrorRgb(coming, width);
      work(coming, going, width);
      write(going, y, target);
    }
  };
}

// lines/ knows how a frame goes line by line through compiled loops. It must not know where the compiled module, the memory
// or the threads come from: the edge hands them in.

import { type PlaneLayout, planeSizes } from '../planes.js';

/** Bytes of a plane's code. */
export const codeBytes = ({ bits }: PlaneLayout): number => (bits > 8 ? 2 : 1);

/** Where a plane lies in a frame. */
export interface PlanePlace {
  /** Bytes from the frame's beginning. */
  readonly at: number;
  /** Codes of a line. */
  readonly count: number;
  readonly lines: number;
  /** Pixels that stand for one code, across and down. */
  readonly across: 1 | 2;
  readonly down: 1 | 2;
}

export function planePlaces(layout: PlaneLayout): PlanePlace[] {
  let at = 0;
  return planeSizes(layout).map(([count, lines], i) => {
    const parted = layout.kind === 'luma-chroma' && i > 0;
    const place = { at, count, lines, across: parted ? layout.across : 1, down: parted ? layout.down : 1 };
    at += count * lines * codeBytes(layout);
    return place;
  });
}

/** Gives out addresses of a memory from `start` on, each a multiple of 16, with `room` bytes before and behind. */
export function addressesFrom(start: number, room: number) {
  let free = start;
  return {
    take(bytes: number): number {
      const address = free + room;
      free = address + 16 * Math.ceil((bytes + room) / 16);
      return address;
    },
    /** Where nothing was given out yet. */
    end: () => free,
  };
}

export type Addresses = ReturnType<typeof addressesFrom>;

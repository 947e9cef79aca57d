import type { ByteSource } from '../byte-source.js';
import type { StillKind } from '../still-kind.js';
import { type Carried, joined } from './carried.js';
import { intoJpeg } from './into-jpeg.js';
import { intoPng } from './into-png.js';
import { intoTiff } from './into-tiff.js';

/** How a file that an encoder wrote becomes one that carries more: its picture, which is large, is not touched. */
export interface Addition {
  /** Takes the place of the file's first `replaces` bytes, and is never shorter. */
  readonly head: Uint8Array;
  readonly replaces: number;
  /** Comes behind the file's last byte. */
  readonly tail: Uint8Array;
}

/** For each format, how what is carried gets into a file that the encoder wrote without it. */
const ways = { png: intoPng, jpeg: intoJpeg, tiff: intoTiff } as const satisfies Record<
  StillKind,
  (file: ByteSource, carried: Carried) => Addition
>;

export const additionFor = (kind: StillKind, file: ByteSource, carried: Carried): Addition =>
  ways[kind](file, carried);

/** A file in memory with an addition. */
export const withAddition = (file: Uint8Array, { head, replaces, tail }: Addition): Uint8Array =>
  joined(head, file.subarray(replaces), tail);

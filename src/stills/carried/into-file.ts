import type { StillKind } from '../still-kind.js';
import type { Carried } from './carried.js';
import { intoJpeg } from './into-jpeg.js';
import { intoPng } from './into-png.js';
import { intoTiff } from './into-tiff.js';

/** For each format, how what is carried gets into a file that the encoder wrote without it. */
const ways = { png: intoPng, jpeg: intoJpeg, tiff: intoTiff } as const satisfies Record<
  StillKind,
  (file: Uint8Array, carried: Carried) => Uint8Array[]
>;

/** @returns the file in pieces, one after the other: the picture, which is large, is not copied */
export const intoFile = (kind: StillKind, file: Uint8Array, carried: Carried): Uint8Array[] =>
  ways[kind](file, carried);

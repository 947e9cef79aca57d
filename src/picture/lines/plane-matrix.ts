import { between, fromRgbFactors, lumaCodes, rgbCodes, toRgbFactors } from '../../colour/luma-chroma.js';
import type { SignalRange } from '../../colour/signal-range.js';
import type { FrameCoding } from '../planar-codec.js';

/** Three rows of four numbers: shares of three values, and what is added. */
export type PlaneMatrix = readonly number[];

/** Planes of RGB lie green, blue, red. */
const planeOfChannel = [2, 0, 1];

const rowOf = (place: number, { factor, zero }: { factor: number; zero: number }): number[] =>
  [0, 1, 2].map((i) => (i === place ? factor : 0)).concat(zero);

/** Codes of a frame's planes, in their order, to red, green and blue of 16 bits; of grey all three from the one plane. */
export function planesToRgb({ layout, matrix, range }: FrameCoding, rgbRange: SignalRange): PlaneMatrix {
  const { kind, bits } = layout;
  if (kind !== 'luma-chroma') {
    const scale = between(lumaCodes(bits, range), rgbCodes(rgbRange));
    return planeOfChannel.flatMap((plane) => rowOf(kind === 'grey' ? 0 : plane, scale));
  }
  const f = toRgbFactors({ matrix, bits, range, rgbRange });
  return [
    [f.luma, 0, f.redFromCr, f.redZero],
    [f.luma, f.greenFromCb, f.greenFromCr, f.greenZero],
    [f.luma, f.blueFromCb, 0, f.blueZero],
  ].flat();
}

/** Red, green and blue of 16 bits to codes of a frame's planes, in their order: luma and colour differences, or RGB. */
export function rgbToPlanes({ layout, matrix, range }: FrameCoding, rgbRange: SignalRange): PlaneMatrix {
  const { kind, bits } = layout;
  if (kind !== 'luma-chroma') {
    const scale = between(rgbCodes(rgbRange), lumaCodes(bits, range));
    return [1, 2, 0].flatMap((channel) => rowOf(channel, scale));
  }
  const { luma, cb, cr, lumaZero, chromaZero } = fromRgbFactors({ matrix, bits, range, rgbRange });
  return [...luma, lumaZero, ...cb, chromaZero, ...cr, chromaZero];
}

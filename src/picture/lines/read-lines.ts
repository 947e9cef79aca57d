import type { SignalRange } from '../../colour/signal-range.js';
import { linesAround, spreadShares } from '../chroma-sampling.js';
import type { FrameCoding } from '../planar-codec.js';
import type { LineModule } from './line-module.js';
import { type Addresses, codeBytes, type PlanePlace, planePlaces } from './places.js';
import { planesToRgb } from './plane-matrix.js';

/** Puts line `y` of the frame at address `frame`, as r g b of 16 bits, to address `rgb`. */
export type ReadLine = (frame: number, y: number, rgb: number) => void;

/**
 * Lines of a frame in planes, as pixels of r g b: what `frameToRgb` does to a whole frame.
 * @param addresses where memory is free to work in
 */
export function lineReader(
  module: LineModule,
  memory: ArrayBufferLike,
  { layout, ...coding }: FrameCoding,
  rgbRange: SignalRange,
  addresses: Addresses,
): ReadLine {
  const { width, kind, siteAcross, siteDown } = layout;
  const planes = planePlaces(layout);
  const bytes = codeBytes(layout);
  const { before, behind } = spreadShares[siteAcross];
  const [first, second, third] = planes.map(() => addresses.take(4 * width));
  const matrix = addresses.take(48);
  new Float32Array(memory, matrix, 12).set(planesToRgb({ layout, ...coding }, rgbRange));

  function readPlane({ at, count, lines, down }: PlanePlace, frame: number, y: number, line: number) {
    const { here, other, share } =
      down === 2 ? linesAround(y, lines, siteDown) : { here: y, other: y, share: 0 };
    const codes = (row: number) => frame + at + row * count * bytes;
    module.readLine(bytes, codes(here), codes(share === 0 ? here : other), share, count, line);
  }
  if (kind === 'grey')
    return (frame, y, rgb) => {
      readPlane(planes[0], frame, y, first);
      module.linesToRgb(matrix, first, first, first, width, rgb);
    };
  if (planes[1].across === 2)
    return (frame, y, rgb) => {
      readPlane(planes[1], frame, y, second);
      readPlane(planes[2], frame, y, third);
      const luma = frame + y * width * bytes;
      module.spreadToRgb(matrix, bytes, luma, second, third, before, behind, width, rgb);
    };
  return (frame, y, rgb) => {
    readPlane(planes[0], frame, y, first);
    readPlane(planes[1], frame, y, second);
    readPlane(planes[2], frame, y, third);
    module.linesToRgb(matrix, first, second, third, width, rgb);
  };
}

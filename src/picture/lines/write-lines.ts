import type { SignalRange } from '../../colour/signal-range.js';
import { gatherPlaces, gatherWeights } from '../chroma-sampling.js';
import type { FrameCoding } from '../planar-codec.js';
import type { Siting } from '../planes.js';
import type { LineModule } from './line-module.js';
import { type Addresses, codeBytes, type PlanePlace, planePlaces } from './places.js';
import { rgbToPlanes } from './plane-matrix.js';

/** Puts pixels of r g b of 16 bits at address `rgb` as line `y` of the frame at address `frame`; lines come in order. */
export type WriteLine = (rgb: number, y: number, frame: number) => void;

/** Lines that one of a plane with half the lines is taken together from, at most: no more are kept. */
const kept = 4;

/** Weights of the four from the one before a pair to the one behind it. */
function fourWeights(siting: Siting): [number, number, number, number] {
  const [w0, w1, w2, w3 = 0] = gatherWeights(siting);
  return [w0, w1, w2, w3];
}

/** For each line of a plane with half the lines, the four that it is taken together from. */
function fourPlaces(height: number, siting: Siting): [number, number, number, number][] {
  const places = gatherPlaces(height, siting);
  const taps = gatherWeights(siting).length;
  return Array.from({ length: places.length / taps }, (_, i) => {
    const [p0, p1, p2, p3 = p2] = places.subarray(i * taps, (i + 1) * taps);
    return [p0, p1, p2, p3];
  });
}

/** Says what lies beyond the ends of a line whose pairs are taken together: as `gatherPlaces` has it. */
function endHolder(memory: ArrayBufferLike, width: number, siting: Siting): (line: number) => void {
  const places = fourPlaces(width, siting);
  const [before] = places[0];
  const last = 2 * (places.length - 1);
  const [, , second, behind] = places[places.length - 1];
  const numbers = new Float32Array(memory);
  return (line) => {
    const at = line / 4;
    numbers[at - 1] = numbers[at + before];
    numbers[at + last + 1] = numbers[at + second];
    numbers[at + last + 2] = numbers[at + behind];
  };
}

/**
 * Pixels of r g b, line by line from the top, to a frame in planes: what `rgbToFrame` does to a whole frame.
 * @param addresses where memory is free to work in
 */
export function lineWriter(
  module: LineModule,
  memory: ArrayBufferLike,
  { layout, ...coding }: FrameCoding,
  rgbRange: SignalRange,
  addresses: Addresses,
): WriteLine {
  const { width, height, bits, siteAcross, siteDown } = layout;
  const [first, ...others] = planePlaces(layout);
  const bytes = codeBytes(layout);
  const most = 2 ** bits - 1;
  const line = () => addresses.take(4 * width);
  /** Of the second plane and the third, the last lines at every pixel. */
  const keptLines = others.map(({ down }) => Array.from({ length: down === 1 ? 1 : kept }, line));
  const result = line();
  const matrix = addresses.take(48);
  new Float32Array(memory, matrix, 12).set(rgbToPlanes({ layout, ...coding }, rgbRange));
  const [weightsAcross, weightsDown] = [fourWeights(siteAcross), fourWeights(siteDown)];
  const placesDown = fourPlaces(height, siteDown);
  const holdEnds = endHolder(memory, width, siteAcross);

  /** The line of the picture with which a line of half as many has all that it is taken together from. */
  const complete = (row: number) => Math.min(height - 1, 2 * row + 2);

  function put(from: number, { at, count, across }: PlanePlace, row: number, frame: number): void {
    const to = frame + at + row * count * bytes;
    if (across === 1) return module.writeLine(bytes, from, count, most, to);
    holdEnds(from);
    module.gatherCodes(bytes, from, count, ...weightsAcross, most, to);
  }

  /** Writes the lines of a plane that can be told when line `y` of the picture is there. */
  function writePlane(plane: PlanePlace, lines: readonly number[], y: number, frame: number): void {
    if (plane.down === 1) return put(lines[0], plane, y, frame);
    for (let row = Math.max(0, (y >> 1) - 1); row < plane.lines && complete(row) <= y; row++) {
      if (complete(row) < y) continue;
      const [l0, l1, l2, l3] = placesDown[row].map((place) => lines[place % kept]);
      module.gatherLines(l0, l1, l2, l3, width, ...weightsDown, result);
      put(result, plane, row, frame);
    }
  }
  return (rgb, y, frame) => {
    const [b, c] = keptLines.map((lines) => lines[y % lines.length]);
    module.rgbToLines(matrix, rgb, width, bytes, most, frame + y * first.count * bytes, b, c);
    others.forEach((plane, i) => writePlane(plane, keptLines[i], y, frame));
  };
}

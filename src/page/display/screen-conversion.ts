import { primaries } from '../../colour/primaries/index.js';
import { rgbToRgb } from '../../colour/primaries/rgb-matrix.js';
import { toFull } from '../../colour/signal-range.js';
import { fitsScreen, type Signal, shownWhite } from '../../jobs/signal.js';
import { primariesOf, transferFunctionOf } from '../../look/sections/signal.js';

/** How code values become what an sRGB screen shows: a table to light, a matrix to BT.709; then sRGB's own curve. */
export interface ScreenConversion {
  /** Linear light, white 1, of {@link decodeEntries} evenly spaced code values 0..1. */
  readonly decode: Float32Array;
  /** Row by row. */
  readonly matrix: readonly number[];
}

export const decodeEntries = 2048;

/** Undefined where the screen shows the codes as they are. */
export function screenConversion(signal: Signal): ScreenConversion | undefined {
  if (fitsScreen(signal)) return undefined;
  const { decode } = transferFunctionOf(signal.encoding);
  const white = shownWhite(signal);
  return {
    decode: Float32Array.from(
      { length: decodeEntries },
      (_, i) => decode(toFull(i / (decodeEntries - 1), signal.range)) / white,
    ),
    matrix: rgbToRgb(primariesOf(signal.primaries), primaries.bt709),
  };
}

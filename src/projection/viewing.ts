import { cat16 } from '../colour/adaptation.js';
import { primaries } from '../colour/primaries/index.js';
import { rgbToXyz } from '../colour/primaries/rgb-matrix.js';
import {
  diagonal3,
  identity3,
  invert3,
  type Matrix3,
  multiply3,
  type Run,
  transform3,
  type Triple,
} from '../maths/matrix3.js';

/** What lies around the picture. */
export type Surround = 'average' | 'dim' | 'dark';

/**
 * System gamma that looks right in a surround. Common practice, textbook figures after Bartleson and Breneman 1967
 * (J. Opt. Soc. Am. 57, 953-957) and Hunt; not read in the source.
 */
export const surroundExponent: Readonly<Record<Surround, number>> = { average: 1, dim: 1.25, dark: 1.5 };

/** Highest of three numbers. */
const highest = (triple: Triple) => Math.max(...triple);

/**
 * How much an eye that has only partly adapted to the lamp still sees of its warmth: linear BT.2020 balanced to the
 * lamp's open gate -> linear BT.2020 of a D65 display. Scaled so that the open gate just fits the display: the highest
 * channel it has there is 1.
 * @param openGate linear BT.2020 of the lamp's open gate, luminance 1
 * @param degree degree of adaptation to the lamp, 0 (none, the full warmth) to 1 (full, neutral)
 * @param display linear BT.2020 to the display's own primaries, in which a warm white's red is higher the narrower
 *   they are
 */
export function lampAsSeen(openGate: Triple, degree: number, display: Matrix3 = identity3): Matrix3 {
  const toXyz = rgbToXyz(primaries.bt2020);
  const lampWhite = transform3(toXyz, openGate);
  const displayWhite = transform3(toXyz, [1, 1, 1]);
  const adapted = multiply3(cat16(lampWhite, displayWhite, degree), multiply3(toXyz, diagonal3(openGate)));
  const seen = multiply3(invert3(toXyz), adapted);
  const fit = 1 / highest(transform3(display, transform3(seen, [1, 1, 1])));
  return seen.map((value) => fit * value) as unknown as Matrix3;
}

/** Below this share of white the exponent lets go, so that the deepest shadows keep a finite slope. */
const deepest = 0.002;

/**
 * Carries a picture from the surround it was projected in to that of the display: luminance relative to white raised
 * to the ratio of the two system gammas, chromaticity kept. Black stays black and white white.
 * @param whiteLuminance BT.2020 luminance of the picture's white: below 1 for a warm white whose highest channel is 1
 */
export function surroundRun(projected: Surround, display: Surround, whiteLuminance = 1): Run {
  const exponent = surroundExponent[display] / surroundExponent[projected];
  const [, , , wr, wg, wb] = rgbToXyz(primaries.bt2020).map((weight) => weight / whiteLuminance);
  const deep = deepest * deepest;
  return (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const y = wr * values[i] + wg * values[i + 1] + wb * values[i + 2];
      const gain = Math.pow((y * y + deep) / (1 + deep), (exponent - 1) / 2);
      for (let k = 0; k < 3; k++) values[i + k] *= gain;
    }
  };
}

/** BT.2020 luminance of the open gate behind {@link lampAsSeen}. */
export function openGateLuminance(seen: Matrix3): number {
  return transform3(multiply3(rgbToXyz(primaries.bt2020), seen), [1, 1, 1])[1];
}

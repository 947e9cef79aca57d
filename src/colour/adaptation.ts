// Colorimetry: spectra, observer, lights, adaptation, encodings, primaries, difference.
// Knows nothing of film, projectors, pictures or lookup tables.
import { diagonal3, invert3, multiply3, transform3, type Matrix3, type Triple } from '../maths/matrix3.js';

/** XYZ to the cone-like responses of CAT16 (Li et al. 2017, Color Res. Appl. 42, 703-718). */
export const cat16Cones: Matrix3 = [
  0.401288, 0.650173, -0.051461, -0.250268, 1.204414, 0.045854, -0.002079, 0.048952, 0.953127,
];

const conesInverse = invert3(cat16Cones);

/** The cone-like responses to a white, its luminance brought to 1. */
function conesOfWhite([x, y, z]: Triple): Triple {
  return transform3(cat16Cones, [x / y, 1, z / y]);
}

/**
 * CAT16 in one step: the matrix that gives colours seen under one white the look they have under another.
 * Of the whites only the chromaticity counts; luminance is left alone.
 * @param from XYZ of the white adapted to, Y above 0 @param to XYZ of the white to be shown
 * @param degree 0 (the colours stay as they are) to 1 (`from` becomes `to`)
 */
export function cat16(from: Triple, to: Triple, degree = 1): Matrix3 {
  const [r, g, b] = conesOfWhite(from);
  const [toR, toG, toB] = conesOfWhite(to);
  const gain = (a: number, toA: number) => (degree * toA) / a + 1 - degree;
  return multiply3(
    conesInverse,
    multiply3(diagonal3([gain(r, toR), gain(g, toG), gain(b, toB)]), cat16Cones),
  );
}

/** What lies around the picture: as light as a lit room, dimmer than a fifth of its white, or nothing. */
export type Surround = 'average' | 'dim' | 'dark';

/** The factor F of each surround (CIE 248:2022, as in CIE 159:2004). */
const surroundFactor = { average: 1, dim: 0.9, dark: 0.8 } as const satisfies Record<Surround, number>;

/**
 * How far the eye adapts to the white before it, 0..1 (CIE 248:2022).
 * @param adaptingLuminanceCdM2 mean luminance of the field of view; usually a fifth of the white's
 */
export function degreeOfAdaptation(adaptingLuminanceCdM2: number, surround: Surround): number {
  const degree = surroundFactor[surround] * (1 - Math.exp((-adaptingLuminanceCdM2 - 42) / 92) / 3.6);
  return Math.min(1, Math.max(0, degree));
}

import type { Run, Triple } from '../maths/matrix3.js';

/** Up to this share of the way from grey to the gamut's edge colours stay as they are. */
const untouched = 0.8;
/** By so much a colour on the gamut's edge may seem to lie outside. */
const rounding = 1e-9;
/** Colours further out than this many times the edge are cut: only those that no film makes. */
const furthest = 2.5;

/**
 * How far from grey a colour lies on its way to the gamut's edge: 0 grey, 1 the edge, above it outside. A colour without
 * luminance is as far out as can be: next to it lie colours of little luminance that are nearly so.
 */
function outness(r: number, g: number, b: number, luma: Triple): number {
  const grey = luma[0] * r + luma[1] * g + luma[2] * b;
  const least = Math.min(r, g, b);
  if (grey > 0) return (grey - least) / grey;
  return least < grey ? Infinity : 0;
}

/** Density 6, in which no colour can be told: what is darker has the hue of a rounding. */
const darkest = 1e-6;

/** The highest outness in a run of linear colours. */
export function highestOutness(values: Float64Array, count: number, luma: Triple): number {
  let highest = 0;
  for (let i = 0; i < 3 * count; i += 3) {
    const [r, g, b] = [values[i], values[i + 1], values[i + 2]];
    if (Math.max(Math.abs(r), Math.abs(g), Math.abs(b)) > darkest)
      highest = Math.max(highest, outness(r, g, b, luma));
  }
  return highest;
}

/**
 * Brings colours outside a gamut into it along the straight line to the grey of the same luminance, so dominant
 * wavelength and luminance stay. The curve leaves the identity smoothly and reaches the edge at `reach`: where nothing
 * lies outside (`reach` <= 1) nothing is touched. Linear light in the gamut's primaries, in place.
 * @param reach outness of the furthest colour that can come
 * @param luma luminance weights of the primaries
 */
export function gamutCompressionRun(reach: number, luma: Triple): Run {
  const limit = Math.min(reach, furthest);
  if (limit <= 1 + rounding) return () => {};
  const span = limit - untouched;
  const room = 1 - untouched;
  // (t / (1 + k t)) leaves with slope 1 and passes through (span, room).
  const bend = 1 / room - 1 / span;
  return (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const out = outness(values[i], values[i + 1], values[i + 2], luma);
      if (out <= untouched) continue;
      const t = Math.min(out, limit) - untouched;
      const pull = (untouched + t / (1 + bend * t)) / out;
      const grey = luma[0] * values[i] + luma[1] * values[i + 1] + luma[2] * values[i + 2];
      for (let k = 0; k < 3; k++) values[i + k] = grey + pull * (values[i + k] - grey);
    }
  };
}

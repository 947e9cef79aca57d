import type { Run } from '../maths/matrix3.js';
import type { CurveTable, Lattice, Lut } from './lattice.js';
import { nodePosition } from './lattice.js';

/** How values between the nodes of a 3D LUT are found. */
export type Interpolation = 'tetrahedral' | 'trilinear';

/**
 * A LUT as a function on code values, in double precision and without allocation per colour.
 * Codes outside the domain get the value at its edge; what is not a number counts as the lower edge.
 * @param lut a 3D LUT, or a 1D LUT (always linear between entries)
 * @param method tetrahedral holds greys exactly along the diagonal; trilinear is the other common one
 */
export function sampleLut(lut: Lut, method: Interpolation = 'tetrahedral'): Run {
  if (lut.kind === '1d') return linear(lut);
  return method === 'tetrahedral' ? tetrahedral(lut) : trilinear(lut);
}

/** One curve a channel, linear between entries. */
function linear({ size, domainMin, domainMax, values }: CurveTable): Run {
  return (run, count) => {
    for (let i = 0; i < 3 * count; i++) {
      const channel = i % 3;
      const at = nodePosition(run[i], domainMin[channel], domainMax[channel], size - 1);
      const entry = Math.min(Math.floor(at), size - 2);
      const share = at - entry;
      const low = 3 * entry + channel;
      run[i] = values[low] * (1 - share) + values[low + 3] * share;
    }
  };
}

/**
 * Tetrahedral interpolation: each cell is cut along its diagonal into six tetrahedra, chosen by the order of
 * the three fractions. Source (cited from memory): Sakamoto and Itooka, US patent 4 275 413, 1981.
 */
function tetrahedral({ size, domainMin, domainMax, values }: Lattice): Run {
  const [minR, minG, minB] = domainMin;
  const [maxR, maxG, maxB] = domainMax;
  const last = size - 1;
  const [red, green, blue] = [3, 3 * size, 3 * size * size];
  const white = red + green + blue;
  return (run, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const r = nodePosition(run[i], minR, maxR, last);
      const g = nodePosition(run[i + 1], minG, maxG, last);
      const b = nodePosition(run[i + 2], minB, maxB, last);
      const cellR = Math.min(Math.floor(r), last - 1);
      const cellG = Math.min(Math.floor(g), last - 1);
      const cellB = Math.min(Math.floor(b), last - 1);
      const fr = r - cellR;
      const fg = g - cellG;
      const fb = b - cellB;
      // From the cell's dark corner along the largest fraction, then the middle one, then the smallest.
      let first = green;
      let two = green + blue;
      let [high, middle, low] = [fg, fb, fr];
      if (fr >= fg && fr >= fb) {
        first = red;
        high = fr;
        if (fg >= fb) [two, middle, low] = [red + green, fg, fb];
        else [two, middle, low] = [red + blue, fb, fg];
      } else if (fg >= fb) {
        if (fr >= fb) [two, middle, low] = [green + red, fr, fb];
      } else {
        first = blue;
        high = fb;
        if (fr >= fg) [two, middle, low] = [blue + red, fr, fg];
        else [two, middle, low] = [blue + green, fg, fr];
      }
      const corner = red * cellR + green * cellG + blue * cellB;
      for (let c = 0; c < 3; c++) {
        const o = corner + c;
        run[i + c] =
          values[o] * (1 - high) +
          values[o + first] * (high - middle) +
          values[o + two] * (middle - low) +
          values[o + white] * low;
      }
    }
  };
}

/** Trilinear interpolation: linear along red, then green, then blue, between the eight corners of a cell. */
function trilinear({ size, domainMin, domainMax, values }: Lattice): Run {
  const [minR, minG, minB] = domainMin;
  const [maxR, maxG, maxB] = domainMax;
  const last = size - 1;
  const [red, green, blue] = [3, 3 * size, 3 * size * size];
  return (run, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const r = nodePosition(run[i], minR, maxR, last);
      const g = nodePosition(run[i + 1], minG, maxG, last);
      const b = nodePosition(run[i + 2], minB, maxB, last);
      const cellR = Math.min(Math.floor(r), last - 1);
      const cellG = Math.min(Math.floor(g), last - 1);
      const cellB = Math.min(Math.floor(b), last - 1);
      const fr = r - cellR;
      const fg = g - cellG;
      const fb = b - cellB;
      const corner = red * cellR + green * cellG + blue * cellB;
      for (let c = 0; c < 3; c++) {
        const o = corner + c;
        const near = values[o] * (1 - fr) + values[o + red] * fr;
        const up = values[o + green] * (1 - fr) + values[o + green + red] * fr;
        const back = values[o + blue] * (1 - fr) + values[o + blue + red] * fr;
        const far = values[o + blue + green] * (1 - fr) + values[o + blue + green + red] * fr;
        run[i + c] = (near * (1 - fg) + up * fg) * (1 - fb) + (back * (1 - fg) + far * fg) * fb;
      }
    }
  };
}

import type { FromRgbFactors } from '../colour/luma-chroma.js';
import { gatherPlaces, gatherWeights } from './chroma-sampling.js';
import { type Plane, type PlaneLayout, planeSizes } from './planes.js';

const toCode = (raised: number, most: number): number =>
  raised >= most ? most : raised > 0 ? raised | 0 : 0;

/** Takes the pixels of a line together, where a colour difference stands for two of them. */
function gatherLine(
  line: Float32Array,
  places: Int32Array,
  weights: readonly number[],
  target: Float32Array,
): void {
  const taps = weights.length;
  for (let i = 0; i < target.length; i++) {
    let sum = 0;
    for (let k = 0; k < taps; k++) sum += weights[k] * line[places[i * taps + k]];
    target[i] = sum;
  }
}

/** Takes the lines of a plane together and writes its codes. */
function gatherLines(lines: Float32Array, layout: PlaneLayout, plane: Plane): void {
  const [, [count, rows]] = planeSizes(layout);
  const most = 2 ** layout.bits - 1;
  const whole = layout.down === 1;
  const weights = whole ? [1] : gatherWeights(layout.siteDown);
  const places = whole ? undefined : gatherPlaces(layout.height, layout.siteDown);
  for (let row = 0; row < rows; row++)
    for (let x = 0; x < count; x++) {
      let sum = 0.5;
      for (let k = 0; k < weights.length; k++)
        sum += weights[k] * lines[(places?.[row * weights.length + k] ?? row) * count + x];
      plane[row * count + x] = toCode(sum, most);
    }
}

/**
 * Red, green and blue of 16 bits to luma and colour differences.
 * @param source interleaved, 3 width height codes
 */
export function rgbToLumaChroma(
  layout: PlaneLayout,
  source: Uint16Array,
  factors: FromRgbFactors,
  [luma, cb, cr]: readonly Plane[],
): void {
  const { width, height, across, bits, siteAcross } = layout;
  const most = 2 ** bits - 1;
  const count = Math.ceil(width / across);
  const [kr, kg, kb] = factors.luma;
  const [br, bg, bb] = factors.cb;
  const [rr, rg, rb] = factors.cr;
  const lumaZero = factors.lumaZero + 0.5;
  const { chromaZero } = factors;
  const [blueLine, redLine] = [new Float32Array(width), new Float32Array(width)];
  const [blueLines, redLines] = [new Float32Array(count * height), new Float32Array(count * height)];
  const places = gatherPlaces(width, siteAcross);
  const weights = gatherWeights(siteAcross);
  for (let y = 0; y < height; y++) {
    const to = y * width;
    for (let x = 0, from = 3 * to; x < width; x++, from += 3) {
      const r = source[from];
      const g = source[from + 1];
      const b = source[from + 2];
      luma[to + x] = toCode(kr * r + kg * g + kb * b + lumaZero, most);
      blueLine[x] = br * r + bg * g + bb * b + chromaZero;
      redLine[x] = rr * r + rg * g + rb * b + chromaZero;
    }
    for (const [line, lines] of [
      [blueLine, blueLines],
      [redLine, redLines],
    ]) {
      const part = lines.subarray(y * count, (y + 1) * count);
      if (across === 1) part.set(line);
      else gatherLine(line, places, weights, part);
    }
  }
  gatherLines(blueLines, layout, cb);
  gatherLines(redLines, layout, cr);
}

/** Every `step`th code of 16 bits from `at`, as a plane of `bits`: `factor code + zero`. */
export function codesToPlane(
  source: Uint16Array,
  { factor, zero }: { readonly factor: number; readonly zero: number },
  plane: Plane,
  bits: number,
  at = 0,
  step = 1,
): void {
  const most = 2 ** bits - 1;
  for (let i = 0, from = at; i < plane.length; i++, from += step)
    plane[i] = toCode(factor * source[from] + zero + 0.5, most);
}

import type { ToRgbFactors } from '../colour/luma-chroma.js';
import { linesAround, spreadLine } from './chroma-sampling.js';
import { type Plane, type PlaneLayout, planeSizes } from './planes.js';

/** Numbers that a typed array of 16 bits keeps: rounded half up, clamped. */
const toCode = (raised: number): number => (raised >= 65535 ? 65535 : raised > 0 ? raised | 0 : 0);

/** A colour-difference plane, one line of the picture at a time, at every pixel. */
function lineReader(layout: PlaneLayout, plane: Plane): (y: number, line: Float32Array) => void {
  const { width, across, down, siteAcross, siteDown } = layout;
  const [, [count, lines]] = planeSizes(layout);
  const mixed = new Float32Array(count);
  const mix = (first: number, second: number, share: number) => {
    const [a, b] = [first * count, second * count];
    for (let x = 0; x < count; x++) mixed[x] = plane[a + x] * (1 - share) + plane[b + x] * share;
  };
  return (y, line) => {
    if (down === 1) mix(y, y, 0);
    else {
      const { here, other, share } = linesAround(y, lines, siteDown);
      mix(here, other, share);
    }
    if (across === 1) line.set(mixed);
    else spreadLine(mixed, line, width, siteAcross);
  };
}

/**
 * Luma and colour differences to red, green and blue of 16 bits, interleaved.
 * @param target as many codes as 3 width height; codes beyond black and white are cut
 */
export function lumaChromaToRgb(
  layout: PlaneLayout,
  [luma, cb, cr]: readonly Plane[],
  factors: ToRgbFactors,
  target: Uint16Array,
): void {
  const { width, height } = layout;
  const [blueLine, redLine] = [new Float32Array(width), new Float32Array(width)];
  const [readBlue, readRed] = [lineReader(layout, cb), lineReader(layout, cr)];
  const { luma: ky, redFromCr, greenFromCb, greenFromCr, blueFromCb } = factors;
  const [redZero, greenZero, blueZero] = [factors.redZero, factors.greenZero, factors.blueZero].map(
    (zero) => zero + 0.5,
  );
  for (let y = 0; y < height; y++) {
    readBlue(y, blueLine);
    readRed(y, redLine);
    const from = y * width;
    for (let x = 0, to = 3 * from; x < width; x++, to += 3) {
      const l = ky * luma[from + x];
      const b = blueLine[x];
      const r = redLine[x];
      target[to] = toCode(l + redFromCr * r + redZero);
      target[to + 1] = toCode(l + greenFromCb * b + greenFromCr * r + greenZero);
      target[to + 2] = toCode(l + blueFromCb * b + blueZero);
    }
  }
}

/** One plane's codes to 16 bits: `factor code + zero`, written at every `step`th place from `at`. */
export function planeToCodes(
  plane: Plane,
  { factor, zero }: { readonly factor: number; readonly zero: number },
  target: Uint16Array,
  at = 0,
  step = 1,
): void {
  for (let i = 0, to = at; i < plane.length; i++, to += step)
    target[to] = toCode(factor * plane[i] + zero + 0.5);
}

// Codes of planes to lines, and lines to red, green and blue.

import { high16, high32, low16, low32 } from '../../../maths/assembly/lanes';
import { fourCodes, rounded, weighed } from './numbers';

/**
 * Codes to numbers, of two lines taken together: `(1 - share) a + share b`.
 * @param bytes of a code, 1 or 2
 * @param a, b where the lines' codes lie; the same address for one line alone
 */
export function readLine(bytes: i32, a: usize, b: usize, share: f32, count: i32, to: usize): void {
  if (bytes == 1) readCodes<u8>(a, b, share, count, to);
  else readCodes<u16>(a, b, share, count, to);
}

// @ts-ignore: decorator
@inline
function readCodes<T>(a: usize, b: usize, share: f32, count: i32, to: usize): void {
  const step = 4 * sizeof<T>();
  if (a == b) {
    for (let i = 0; i < count; i += 4, a += step, to += 16) v128.store(to, fourCodes<T>(a));
    return;
  }
  const shareOfA = f32x4.splat(1 - share);
  const shareOfB = f32x4.splat(share);
  for (let i = 0; i < count; i += 4, a += step, b += step, to += 16) {
    const ofA = f32x4.mul(fourCodes<T>(a), shareOfA);
    v128.store(to, f32x4.add(ofA, f32x4.mul(fourCodes<T>(b), shareOfB)));
  }
}

/** Eight codes of each channel as pixels of r g b; the two bytes behind them are written, too. */
// @ts-ignore: decorator
@inline
function storeRgb(red: v128, green: v128, blue: v128, to: usize): void {
  // Pixels of r g b and a filler each, over which the next one is stored.
  const rg03 = low16(red, green);
  const rg47 = high16(red, green);
  const bb03 = low16(blue, blue);
  const bb47 = high16(blue, blue);
  const p01 = low32(rg03, bb03);
  const p23 = high32(rg03, bb03);
  const p45 = low32(rg47, bb47);
  const p67 = high32(rg47, bb47);
  v128.store64_lane(to, p01, 0);
  v128.store64_lane(to, p01, 1, 6);
  v128.store64_lane(to, p23, 0, 12);
  v128.store64_lane(to, p23, 1, 18);
  v128.store64_lane(to, p45, 0, 24);
  v128.store64_lane(to, p45, 1, 30);
  v128.store64_lane(to, p67, 0, 36);
  v128.store64_lane(to, p67, 1, 42);
}

/** Eight numbers as 16-bit codes, cut to 0..65535. */
// @ts-ignore: decorator
@inline
function codesOf(first: v128, second: v128): v128 {
  return i16x8.narrow_i32x4_u(rounded(first), rounded(second));
}

/**
 * Three lines to pixels of r g b, 16 bits each, cut to 0..65535.
 * @param matrix three rows of four numbers, for red, green and blue: shares of the three lines, and what is added
 * @param to up to 48 bytes behind the pixels are written, too
 */
export function linesToRgb(matrix: usize, a: usize, b: usize, c: usize, width: i32, to: usize): void {
  for (let i = 0; i < width; i += 8, a += 32, b += 32, c += 32, to += 48) {
    const a0 = v128.load(a);
    const a1 = v128.load(a, 16);
    const b0 = v128.load(b);
    const b1 = v128.load(b, 16);
    const c0 = v128.load(c);
    const c1 = v128.load(c, 16);
    storeRgb(
      codesOf(weighed(matrix, a0, b0, c0), weighed(matrix, a1, b1, c1)),
      codesOf(weighed(matrix + 16, a0, b0, c0), weighed(matrix + 16, a1, b1, c1)),
      codesOf(weighed(matrix + 32, a0, b0, c0), weighed(matrix + 32, a1, b1, c1)),
      to,
    );
  }
}

/**
 * The same of luma's codes and two lines of colour differences of which one number stands for two pixels; their ends are
 * held. All of luma counts alike in the three, and of the differences neither the first in red nor the second in blue.
 * @param bytes of a code, 1 or 2
 * @param a where the codes lie
 * @param before share of the number before in the first of the two pixels
 * @param behind share of the number behind in the second
 */
export function spreadToRgb(
  matrix: usize,
  bytes: i32,
  a: usize,
  b: usize,
  c: usize,
  before: f32,
  behind: f32,
  width: i32,
  to: usize,
): void {
  holdEnds(b, (width + 1) >> 1);
  holdEnds(c, (width + 1) >> 1);
  if (bytes == 1) spreadCodes<u8>(matrix, a, b, c, before, behind, width, to);
  else spreadCodes<u16>(matrix, a, b, c, before, behind, width, to);
}

function holdEnds(line: usize, count: i32): void {
  const end = line + 4 * count;
  store<f32>(line - 4, load<f32>(line));
  store<f32>(end, load<f32>(end - 4));
}

// @ts-ignore: decorator
@inline
function spreadCodes<T>(
  matrix: usize,
  a: usize,
  b: usize,
  c: usize,
  before: f32,
  behind: f32,
  width: i32,
  to: usize,
): void {
  const shareBefore = f32x4.splat(before);
  const shareBehind = f32x4.splat(behind);
  const luma = v128.load32_splat(matrix);
  const redOfC = v128.load32_splat(matrix, 8);
  const redZero = v128.load32_splat(matrix, 12);
  const greenOfB = v128.load32_splat(matrix, 20);
  const greenOfC = v128.load32_splat(matrix, 24);
  const greenZero = v128.load32_splat(matrix, 28);
  const blueOfB = v128.load32_splat(matrix, 36);
  const blueZero = v128.load32_splat(matrix, 44);
  for (; width > 0; width -= 8, a += 8 * sizeof<T>(), b += 16, c += 16, to += 48) {
    const firstB = leaning(b, -4, shareBefore);
    const secondB = leaning(b, 4, shareBehind);
    const b0 = low32(firstB, secondB);
    const b1 = high32(firstB, secondB);
    const firstC = leaning(c, -4, shareBefore);
    const secondC = leaning(c, 4, shareBehind);
    const c0 = low32(firstC, secondC);
    const c1 = high32(firstC, secondC);
    const a0 = f32x4.mul(fourCodes<T>(a), luma);
    const a1 = f32x4.mul(fourCodes<T>(a + 4 * sizeof<T>()), luma);
    const red0 = f32x4.add(a0, f32x4.add(f32x4.mul(c0, redOfC), redZero));
    const red1 = f32x4.add(a1, f32x4.add(f32x4.mul(c1, redOfC), redZero));
    const blue0 = f32x4.add(f32x4.add(a0, f32x4.mul(b0, blueOfB)), blueZero);
    const blue1 = f32x4.add(f32x4.add(a1, f32x4.mul(b1, blueOfB)), blueZero);
    const green0 = f32x4.add(
      f32x4.add(a0, f32x4.mul(b0, greenOfB)),
      f32x4.add(f32x4.mul(c0, greenOfC), greenZero),
    );
    const green1 = f32x4.add(
      f32x4.add(a1, f32x4.mul(b1, greenOfB)),
      f32x4.add(f32x4.mul(c1, greenOfC), greenZero),
    );
    storeRgb(codesOf(red0, red1), codesOf(green0, green1), codesOf(blue0, blue1), to);
  }
}

/** Four numbers and a share of those beside them. */
// @ts-ignore: decorator
@inline
function leaning(at: usize, side: i32, share: v128): v128 {
  const here = v128.load(at);
  return f32x4.add(here, f32x4.mul(f32x4.sub(v128.load(at + side), here), share));
}

// Red, green and blue to lines, and lines to codes of planes.

import { andFirst, even, high32, high64, lastAnd, low32, low64, odd } from '../../../maths/assembly/lanes';
import { rounded, weighed } from './numbers';

/**
 * Pixels of r g b, 16 bits each, to codes and two lines; the matrix's rows are the three. The codes are cut to 0..most, and
 * not a byte behind them is written.
 * @param from is used up
 * @param bytes of a code, 1 or 2
 */
export function rgbToLines(
  matrix: usize,
  from: usize,
  width: i32,
  bytes: i32,
  most: i32,
  codes: usize,
  b: usize,
  c: usize,
): void {
  const highest = i16x8.splat(<i16>most);
  for (; width > 0; width -= 8, from += 48, codes += 8 * bytes, b += 32, c += 32) {
    const first = fourToLines(matrix, from, b, c);
    const second = fourToLines(matrix, from + 24, b + 16, c + 16);
    storeCodes(bytes, i16x8.min_u(i16x8.narrow_i32x4_u(first, second), highest), width, codes, from);
  }
}

/** Four pixels to numbers of two lines. @returns those of the first, rounded */
// @ts-ignore: decorator
@inline
function fourToLines(matrix: usize, from: usize, b: usize, c: usize): v128 {
  const p0 = v128.load16x4_u(from);
  const p1 = v128.load16x4_u(from, 6);
  const p2 = v128.load16x4_u(from, 12);
  const p3 = v128.load16x4_u(from, 18);
  const rg01 = low32(p0, p1);
  const rg23 = low32(p2, p3);
  const red = f32x4.convert_i32x4_s(low64(rg01, rg23));
  const green = f32x4.convert_i32x4_s(high64(rg01, rg23));
  const blue = f32x4.convert_i32x4_s(low64(high32(p0, p1), high32(p2, p3)));
  v128.store(b, weighed(matrix + 16, red, green, blue));
  v128.store(c, weighed(matrix + 32, red, green, blue));
  return rounded(weighed(matrix, red, green, blue));
}

/** Stores eight codes, or the `left` that there still are: those by way of memory that is used up. */
// @ts-ignore: decorator
@inline
function storeCodes(bytes: i32, codes: v128, left: i32, to: usize, used: usize): void {
  const stored = bytes == 2 ? codes : i8x16.narrow_i16x8_u(codes, codes);
  if (left < 8) {
    v128.store(used, stored);
    memory.copy(to, used, bytes * left);
  } else if (bytes == 2) v128.store(to, stored);
  else v128.store64_lane(to, stored, 0);
}

/**
 * Numbers of a line, one for each pixel, to codes, one for two pixels, cut to 0..most; not a byte behind them is written.
 * Four pixels are weighed, from the one before the two to the one behind them.
 * @param bytes of a code, 1 or 2
 * @param from one number before the line and two behind it are read: the caller says what they are; it is used up
 */
export function gatherCodes(
  bytes: i32,
  from: usize,
  count: i32,
  w0: f32,
  w1: f32,
  w2: f32,
  w3: f32,
  most: i32,
  to: usize,
): void {
  const highest = i16x8.splat(<i16>most);
  const ofBefore = f32x4.splat(w0);
  const ofFirst = f32x4.splat(w1);
  const ofSecond = f32x4.splat(w2);
  const ofBehind = f32x4.splat(w3);
  let before = v128.load32_splat(from - 4);
  for (; count > 0; count -= 8, from += 64, to += 8 * bytes) {
    const first0 = even(v128.load(from), v128.load(from, 16));
    const second0 = odd(v128.load(from), v128.load(from, 16));
    const first1 = even(v128.load(from, 32), v128.load(from, 48));
    const second1 = odd(v128.load(from, 32), v128.load(from, 48));
    const behind = v128.load32_splat(from, 64);
    const numbers0 = f32x4.add(
      f32x4.add(f32x4.mul(lastAnd(before, second0), ofBefore), f32x4.mul(first0, ofFirst)),
      f32x4.add(f32x4.mul(second0, ofSecond), f32x4.mul(andFirst(first0, first1), ofBehind)),
    );
    const numbers1 = f32x4.add(
      f32x4.add(f32x4.mul(lastAnd(second0, second1), ofBefore), f32x4.mul(first1, ofFirst)),
      f32x4.add(f32x4.mul(second1, ofSecond), f32x4.mul(andFirst(first1, behind), ofBehind)),
    );
    const codes = i16x8.min_u(i16x8.narrow_i32x4_u(rounded(numbers0), rounded(numbers1)), highest);
    storeCodes(bytes, codes, count, to, from);
    before = second1;
  }
}

/** Four lines weighed into one. */
export function gatherLines(
  l0: usize,
  l1: usize,
  l2: usize,
  l3: usize,
  count: i32,
  w0: f32,
  w1: f32,
  w2: f32,
  w3: f32,
  to: usize,
): void {
  const of0 = f32x4.splat(w0);
  const of1 = f32x4.splat(w1);
  const of2 = f32x4.splat(w2);
  const of3 = f32x4.splat(w3);
  for (let i: usize = 0; i < 4 * <usize>count; i += 16) {
    const first = f32x4.add(f32x4.mul(v128.load(l0 + i), of0), f32x4.mul(v128.load(l1 + i), of1));
    const last = f32x4.add(f32x4.mul(v128.load(l2 + i), of2), f32x4.mul(v128.load(l3 + i), of3));
    v128.store(to + i, f32x4.add(first, last));
  }
}

/**
 * Numbers to codes, rounded and cut to 0..most; not a byte behind them is written.
 * @param bytes of a code, 1 or 2
 * @param from is used up
 */
export function writeLine(bytes: i32, from: usize, count: i32, most: i32, to: usize): void {
  const highest = i16x8.splat(<i16>most);
  for (; count > 0; count -= 8, from += 32, to += 8 * bytes) {
    const codes = i16x8.narrow_i32x4_u(rounded(v128.load(from)), rounded(v128.load(from, 16)));
    storeCodes(bytes, i16x8.min_u(codes, highest), count, to, from);
  }
}

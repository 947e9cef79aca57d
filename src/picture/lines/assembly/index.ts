// Loops over the lines of a picture in planes: codes to red, green and blue and back, four to eight pixels at once.
// Compiled by the build to WebAssembly with 128-bit SIMD. It knows addresses and nothing else: see ../frame-through.ts.
// A line is numbers of 32-bit floats, with room for `lineRoom` bytes before and behind: what lies there may be read and
// written, and means nothing unless it is said.

import { andFirst, even, high16, high32, high64, lastAnd, low16, low32, low64, odd } from '../../../maths/assembly/lanes';

/** Bytes that every line, and every run of pixels and codes that is read, has behind it; lines have them before, too. */
export const lineRoom: i32 = 64;

/** Added to a float below 2^22 either way, it leaves the number rounded to a whole one in the lowest 22 bits. */
const whole: f32 = 12582912.0; // 1.5 * 2^23
const wholeAsBits: i32 = 0x4b400000;

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

// @ts-ignore: decorator
@inline
function fourCodes<T>(at: usize): v128 {
  if (sizeof<T>() == 2) return f32x4.convert_i32x4_s(v128.load16x4_u(at));
  return f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load32_zero(at))));
}

/** `m0 a + m1 b + m2 c + m3`, where m are the four numbers of one row of a matrix. */
// @ts-ignore: decorator
@inline
function weighed(row: usize, a: v128, b: v128, c: v128): v128 {
  const ab = f32x4.add(
    f32x4.mul(a, v128.load32_splat(row)),
    f32x4.mul(b, v128.load32_splat(row, 4)),
  );
  return f32x4.add(ab, f32x4.add(f32x4.mul(c, v128.load32_splat(row, 8)), v128.load32_splat(row, 12)));
}

// @ts-ignore: decorator
@inline
function rounded(value: v128): v128 {
  return i32x4.sub(f32x4.add(value, f32x4.splat(whole)), i32x4.splat(wholeAsBits));
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

/** Turns a line of pixels left to right, in place. */
export function mirrorRgb(rgb: usize, width: i32): void {
  let end = rgb + 6 * (width - 1);
  for (; rgb < end; rgb += 6, end -= 6) {
    const left = load<u32>(rgb);
    const leftBlue = load<u16>(rgb, 4);
    store<u32>(rgb, load<u32>(end));
    store<u16>(rgb, load<u16>(end, 4), 4);
    store<u32>(end, left);
    store<u16>(end, leftBlue, 4);
  }
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

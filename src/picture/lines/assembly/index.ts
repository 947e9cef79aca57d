// Loops over the lines of a picture in planes: codes to red, green and blue and back, four to eight pixels at once.
// Compiled by the build to WebAssembly with 128-bit SIMD. It knows addresses and nothing else: see ../frame-lines.ts.
// A line is numbers of 32-bit floats, with room for `lineRoom` bytes before and behind: what lies there may be read and
// written, and means nothing unless it is said.

import { even, high32, high64, low16, low32, low64, odd } from '../../../maths/assembly/lanes';

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

/**
 * One number for two pixels to one for each; the ends are held.
 * @param before share of the number before in the first of the two pixels
 * @param behind share of the number behind in the second
 */
export function spreadLine(from: usize, count: i32, before: f32, behind: f32, to: usize): void {
  store<f32>(from - 4, load<f32>(from));
  store<f32>(from + 4 * count, load<f32>(from + 4 * (count - 1)));
  const shareBefore = f32x4.splat(before);
  const shareBehind = f32x4.splat(behind);
  for (let i = 0; i < count; i += 4, from += 16, to += 32) {
    const here = v128.load(from);
    const toBefore = f32x4.mul(f32x4.sub(v128.load(from - 4), here), shareBefore);
    const toBehind = f32x4.mul(f32x4.sub(v128.load(from, 4), here), shareBehind);
    const first = f32x4.add(here, toBefore);
    const second = f32x4.add(here, toBehind);
    v128.store(to, low32(first, second));
    v128.store(to, high32(first, second), 16);
  }
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

/**
 * Three lines to pixels of r g b, 16 bits each, cut to 0..65535.
 * @param matrix three rows of four numbers, for red, green and blue: shares of the three lines, and what is added
 * @param to a few bytes behind the pixels are written, too
 */
export function linesToRgb(matrix: usize, a: usize, b: usize, c: usize, width: i32, to: usize): void {
  for (let i = 0; i < width; i += 4, a += 16, b += 16, c += 16, to += 24) {
    const la = v128.load(a);
    const lb = v128.load(b);
    const lc = v128.load(c);
    const red = rounded(weighed(matrix, la, lb, lc));
    const green = rounded(weighed(matrix + 16, la, lb, lc));
    const blue = rounded(weighed(matrix + 32, la, lb, lc));
    const rg = i16x8.narrow_i32x4_u(red, green);
    const bb = i16x8.narrow_i32x4_u(blue, blue);
    // Four pixels of r g b and a filler each, over which the next one is stored.
    const rgrg = low16(rg, high64(rg, rg));
    const bbbb = low16(bb, bb);
    const first = low32(rgrg, bbbb);
    const second = high32(rgrg, bbbb);
    v128.store64_lane(to, first, 0);
    v128.store64_lane(to, first, 1, 6);
    v128.store64_lane(to, second, 0, 12);
    v128.store64_lane(to, second, 1, 18);
  }
}

/** Pixels of r g b, 16 bits each, to three lines; the matrix's rows are the lines. */
export function rgbToLines(matrix: usize, from: usize, width: i32, a: usize, b: usize, c: usize): void {
  for (let i = 0; i < width; i += 4, a += 16, b += 16, c += 16, from += 24) {
    const p0 = v128.load16x4_u(from);
    const p1 = v128.load16x4_u(from, 6);
    const p2 = v128.load16x4_u(from, 12);
    const p3 = v128.load16x4_u(from, 18);
    const rg01 = low32(p0, p1);
    const rg23 = low32(p2, p3);
    const red = f32x4.convert_i32x4_s(low64(rg01, rg23));
    const green = f32x4.convert_i32x4_s(high64(rg01, rg23));
    const blue = f32x4.convert_i32x4_s(low64(high32(p0, p1), high32(p2, p3)));
    v128.store(a, weighed(matrix, red, green, blue));
    v128.store(b, weighed(matrix + 16, red, green, blue));
    v128.store(c, weighed(matrix + 32, red, green, blue));
  }
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
 * One number for each pixel to one for two: four pixels weighed, from the one before the two to the one behind them.
 * @param from one number before the line and two behind it are read: the caller says what they are
 */
export function gatherLine(from: usize, count: i32, w0: f32, w1: f32, w2: f32, w3: f32, to: usize): void {
  for (let i = 0; i < count; i += 4, from += 32, to += 16) {
    const pairs0 = v128.load(from);
    const pairs1 = v128.load(from, 16);
    const before = odd(v128.load(from - 8), v128.load(from, 8));
    const behind = even(v128.load(from, 8), v128.load(from, 24));
    v128.store(to, fourWeighed(before, even(pairs0, pairs1), odd(pairs0, pairs1), behind, w0, w1, w2, w3));
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
  for (let i: usize = 0; i < 4 * <usize>count; i += 16)
    v128.store(
      to + i,
      fourWeighed(
        v128.load(l0 + i),
        v128.load(l1 + i),
        v128.load(l2 + i),
        v128.load(l3 + i),
        w0,
        w1,
        w2,
        w3,
      ),
    );
}

// @ts-ignore: decorator
@inline
function fourWeighed(a: v128, b: v128, c: v128, d: v128, w0: f32, w1: f32, w2: f32, w3: f32): v128 {
  const ab = f32x4.add(f32x4.mul(a, f32x4.splat(w0)), f32x4.mul(b, f32x4.splat(w1)));
  return f32x4.add(ab, f32x4.add(f32x4.mul(c, f32x4.splat(w2)), f32x4.mul(d, f32x4.splat(w3))));
}

/**
 * Numbers to codes, rounded and cut to 0..most; not a byte behind them is written.
 * @param bytes of a code, 1 or 2
 */
export function writeLine(bytes: i32, from: usize, count: i32, most: i32, to: usize): void {
  const highest = i16x8.splat(<i16>most);
  const eights = count & ~7;
  const end = from + 4 * eights;
  for (; from < end; from += 32, to += 8 * bytes) {
    const codes = eightCodes(from, highest);
    if (bytes == 2) v128.store(to, codes);
    else v128.store64_lane(to, i8x16.narrow_i16x8_u(codes, codes), 0);
  }
  if (eights == count) return;
  // The rest goes by way of the numbers that are used up.
  const codes = eightCodes(from, highest);
  v128.store(from, bytes == 2 ? codes : i8x16.narrow_i16x8_u(codes, codes));
  memory.copy(to, from, bytes * (count - eights));
}

// @ts-ignore: decorator
@inline
function eightCodes(from: usize, highest: v128): v128 {
  const codes = i16x8.narrow_i32x4_u(rounded(v128.load(from)), rounded(v128.load(from, 16)));
  return i16x8.min_u(codes, highest);
}

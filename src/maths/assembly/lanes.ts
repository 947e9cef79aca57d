// Interleavings of two vectors, in the shapes that a compiler turns into one instruction each.

/** Of eight numbers each: a0 b0 a1 b1 a2 b2 a3 b3 */
// @ts-ignore: decorator
@inline
export function low16(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 0, 1, 16, 17, 2, 3, 18, 19, 4, 5, 20, 21, 6, 7, 22, 23);
}

/** a4 b4 a5 b5 a6 b6 a7 b7 */
// @ts-ignore: decorator
@inline
export function high16(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 8, 9, 24, 25, 10, 11, 26, 27, 12, 13, 28, 29, 14, 15, 30, 31);
}

/** Of two numbers each: a0 b0 */
// @ts-ignore: decorator
@inline
export function low64(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 0, 1, 2, 3, 4, 5, 6, 7, 16, 17, 18, 19, 20, 21, 22, 23);
}

/** a1 b1 */
// @ts-ignore: decorator
@inline
export function high64(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 8, 9, 10, 11, 12, 13, 14, 15, 24, 25, 26, 27, 28, 29, 30, 31);
}

/** Of four numbers each: a0 b0 a1 b1 */
// @ts-ignore: decorator
@inline
export function low32(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 0, 1, 2, 3, 16, 17, 18, 19, 4, 5, 6, 7, 20, 21, 22, 23);
}

/** a2 b2 a3 b3 */
// @ts-ignore: decorator
@inline
export function high32(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 8, 9, 10, 11, 24, 25, 26, 27, 12, 13, 14, 15, 28, 29, 30, 31);
}

/** a0 a2 b0 b2 */
// @ts-ignore: decorator
@inline
export function even(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 0, 1, 2, 3, 8, 9, 10, 11, 16, 17, 18, 19, 24, 25, 26, 27);
}

/** a1 a3 b1 b3 */
// @ts-ignore: decorator
@inline
export function odd(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 4, 5, 6, 7, 12, 13, 14, 15, 20, 21, 22, 23, 28, 29, 30, 31);
}

/** a3 b0 b1 b2 */
// @ts-ignore: decorator
@inline
export function lastAnd(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27);
}

/** a1 a2 a3 b0 */
// @ts-ignore: decorator
@inline
export function andFirst(a: v128, b: v128): v128 {
  return i8x16.shuffle(a, b, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19);
}

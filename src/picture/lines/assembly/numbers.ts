// What the loops over lines share: numbers of codes and back, four at once.

/** Added to a float below 2^22 either way, it leaves the number rounded to a whole one in the lowest 22 bits. */
const whole: f32 = 12582912.0; // 1.5 * 2^23
const wholeAsBits: i32 = 0x4b400000;

// @ts-ignore: decorator
@inline
export function fourCodes<T>(at: usize): v128 {
  if (sizeof<T>() == 2) return f32x4.convert_i32x4_s(v128.load16x4_u(at));
  return f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load32_zero(at))));
}

/** `m0 a + m1 b + m2 c + m3`, where m are the four numbers of one row of a matrix. */
// @ts-ignore: decorator
@inline
export function weighed(row: usize, a: v128, b: v128, c: v128): v128 {
  const ab = f32x4.add(
    f32x4.mul(a, v128.load32_splat(row)),
    f32x4.mul(b, v128.load32_splat(row, 4)),
  );
  return f32x4.add(ab, f32x4.add(f32x4.mul(c, v128.load32_splat(row, 8)), v128.load32_splat(row, 12)));
}

// @ts-ignore: decorator
@inline
export function rounded(value: v128): v128 {
  return i32x4.sub(f32x4.add(value, f32x4.splat(whole)), i32x4.splat(wholeAsBits));
}

/** Cuts a double into halves whose products are exact. Dekker 1971. */
const splitter = 2 ** 27 + 1;

/** What rounding took from `product`, the double nearest to a b, exactly. Dekker 1971, Numerische Mathematik 18. */
function productError(a: number, b: number, product: number): number {
  const aTop = splitter * a - (splitter * a - a);
  const bTop = splitter * b - (splitter * b - b);
  const aRest = a - aTop;
  const bRest = b - bTop;
  return aTop * bTop - product + aTop * bRest + aRest * bTop + aRest * bRest;
}

/**
 * The double nearest to (high shift + low) / divisor, for numbers of 16 to 19 digits, which programs write when
 * they write all that a double has. The quotient is corrected by its exact remainder and taken only if a
 * much larger error than is left would not round it elsewhere (Ziv 1991); else NaN, and the slow way decides.
 * @param high the first 15 digits, a whole number
 * @param shift 10 to 10^4: makes room for the digits of `low`
 * @param low the digits after them, a whole number
 * @param divisor 1 to 10^22, a power of ten
 */
export function longDecimal(high: number, shift: number, low: number, divisor: number): number {
  const shifted = high * shift;
  const top = shifted + low;
  const rest = productError(high, shift, shifted) + (low - (top - shifted));
  const quotient = top / divisor;
  const whole = quotient * divisor;
  const remainder = top - whole - productError(quotient, divisor, whole) + rest;
  const correction = remainder / divisor;
  const doubt = Math.abs(correction) * 2 ** -40;
  const result = quotient + (correction - doubt);
  return result === quotient + (correction + doubt) ? result : NaN;
}

import { longDecimal } from './long-decimal.js';
import { isBlank, latinText } from './text.js';

/** Where reading stands in a line. */
interface Cursor {
  at: number;
}

/** Powers of ten that a double holds exactly. */
const exactPowers = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
/** Digits that a double holds exactly, whatever they are. */
const exactDigits = 15;
/** Digits that fit into two doubles of the kind that `longDecimal` takes. */
const longestDigits = 19;

const zero = 48;
const point = 46;
const plus = 43;
const minus = 45;
const letterE = 101;

const isSign = (byte: number) => byte === plus || byte === minus;
const isDigit = (byte: number) => byte >= zero && byte <= zero + 9;

/**
 * Reads one decimal number, `[+-] digits [. digits] [e [+-] digits]` with a digit at least before or after the
 * point, up to a blank or the end, and gives what `Number` would. NaN for anything else; infinite when too large.
 * Up to 15 digits and a small exponent need one exact division or product (Clinger 1990), up to 19 a corrected
 * one; the rest goes to `Number`.
 */
export function scanNumber(bytes: Uint8Array, cursor: Cursor, end: number): number {
  const start = cursor.at;
  let i = start;
  if (i < end && isSign(bytes[i])) i++;
  let seen = false;
  let afterPoint = false;
  /** Digits from the first that is not 0; those in `high`, and those after them in `low`. */
  let digits = 0;
  let high = 0;
  let low = 0;
  let exponent = 0;
  for (; i < end; i++) {
    const digit = bytes[i] - zero;
    if (digit >= 0 && digit <= 9) {
      seen = true;
      if (digits > 0 || digit > 0) digits++;
      if (digits <= exactDigits) high = 10 * high + digit;
      else low = 10 * low + digit;
      if (afterPoint) exponent--;
    } else if (bytes[i] === point && !afterPoint) afterPoint = true;
    else break;
  }
  if (!seen) return NaN;
  if (i < end && (bytes[i] | 32) === letterE) {
    cursor.at = i + 1;
    exponent += scanExponent(bytes, cursor, end);
    if (Number.isNaN(exponent)) return NaN;
    i = cursor.at;
  }
  cursor.at = i;
  if (i < end && !isBlank(bytes[i])) return NaN;
  const size = digits <= exactDigits ? shortDecimal(high, exponent) : longOne(high, low, digits, exponent);
  if (Number.isNaN(size)) return Number(latinText(bytes, start, i));
  return bytes[start] === minus ? -size : size;
}

/** Exact when both factors are: one rounding. NaN when they are not. */
function shortDecimal(digits: number, exponent: number): number {
  if (exponent < -22 || exponent > 22) return NaN;
  return exponent < 0 ? digits / exactPowers[-exponent] : digits * exactPowers[exponent];
}

function longOne(high: number, low: number, digits: number, exponent: number): number {
  if (digits > longestDigits || exponent < -22 || exponent > 0) return NaN;
  return longDecimal(high, exactPowers[digits - exactDigits], low, exactPowers[-exponent]);
}

/** The whole number after the `e`, held at 9999, which is beyond any double; NaN when there is none. */
function scanExponent(bytes: Uint8Array, cursor: Cursor, end: number): number {
  let i = cursor.at;
  const negative = i < end && bytes[i] === minus;
  if (i < end && isSign(bytes[i])) i++;
  const first = i;
  let power = 0;
  for (; i < end && isDigit(bytes[i]); i++) power = Math.min(10 * power + bytes[i] - zero, 9999);
  cursor.at = i;
  if (i === first) return NaN;
  return negative ? -power : power;
}

/**
 * Reads a row of exactly three finite numbers into `out[at..at + 2]`.
 * @returns false when the line is anything else
 */
export function scanRow(
  bytes: Uint8Array,
  start: number,
  end: number,
  out: Float64Array,
  at: number,
): boolean {
  const cursor = { at: start };
  for (let channel = 0; channel < 3; channel++) {
    while (cursor.at < end && isBlank(bytes[cursor.at])) cursor.at++;
    const value = scanNumber(bytes, cursor, end);
    if (!Number.isFinite(value)) return false;
    out[at + channel] = value;
  }
  while (cursor.at < end && isBlank(bytes[cursor.at])) cursor.at++;
  return cursor.at === end;
}

import { limits } from '../limits.js';
import type { GrowingTable } from './table.js';

const lineFeed = 10;
const carriageReturn = 13;
const blank = 32;
const minus = 45;
const point = 46;
const zero = 48;

/** Digits that 32 bits hold, and those that a double holds, whatever they are. */
const shortDigits = 9;
const exactDigits = 15;
/** By which digits after the point are divided. */
const powers = Float64Array.from({ length: exactDigits + 1 }, (_, i) => Number(`1e${i}`));

/**
 * Reads rows into the table as long as they are written as nearly all are: three numbers of digits, point and minus, 15
 * digits at most, blanks between and a line end behind. Such a number is one exact whole number over another, so one
 * division gives what `Number` gives (Clinger 1990). The bytes are walked once, without a call a number.
 * @param start where a line begins
 * @param limit behind a line feed: a number ends there at the latest, so no byte is asked for behind the last
 * @returns where the first line begins that is not such a row, or has not ended; rows are counted in the table
 */
export function readPlainRows(bytes: Uint8Array, start: number, limit: number, table: GrowingTable): number {
  let row = start;
  while (row < limit && !table.complete) {
    const values = table.roomForRow();
    const to = 3 * table.rows;
    let at = row;
    for (let channel = 0; channel < 3; channel++) {
      if (channel > 0) {
        if (bytes[at] !== blank) return row;
        while (bytes[at] === blank) at++;
      }
      const negative = bytes[at] === minus;
      if (negative) at++;
      const first = at;
      let digits = 0;
      for (let digit = bytes[at] - zero; digit >>> 0 < 10; digit = bytes[++at] - zero)
        digits = (10 * digits + digit) | 0;
      let count = at - first;
      if (count > shortDigits) return row;
      let value = digits;
      let decimals = 0;
      if (bytes[at] === point) {
        const stop = ++at + shortDigits - count;
        let digit = bytes[at] - zero;
        for (; digit >>> 0 < 10 && at < stop; digit = bytes[++at] - zero) digits = (10 * digits + digit) | 0;
        value = digits;
        for (; digit >>> 0 < 10; digit = bytes[++at] - zero) value = 10 * value + digit;
        decimals = at - first - 1 - count;
        count += decimals;
      }
      if (count === 0 || count > exactDigits) return row;
      value /= powers[decimals];
      values[to + channel] = negative ? -value : value;
    }
    if (bytes[at] === carriageReturn) at++;
    if (bytes[at++] !== lineFeed || at - row > limits.lineBytes) return row;
    table.rows++;
    row = at;
  }
  return row;
}

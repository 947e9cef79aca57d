const minus = 45;
const point = 46;
const zero = 48;
const blank = 32;
const lineFeed = 10;

/** The digits of 000 to 999, four bytes each. */
const threeDigits = new Uint8Array(4 * 1000);
for (let i = 0; i < 1000; i++)
  for (let k = 0; k < 3; k++) threeDigits[4 * i + k] = zero + (Math.floor(i / 10 ** (2 - k)) % 10);

/** Bytes that a row may have: three numbers as long as the longest of `toFixed`, a sign each, and what parts them. */
const longestRow = 3 * (1 + 21 + 1 + 15 + 1);

function putThree(bytes: Uint8Array, at: number, three: number): void {
  const from = 4 * three;
  bytes[at] = threeDigits[from];
  bytes[at + 1] = threeDigits[from + 1];
  bytes[at + 2] = threeDigits[from + 2];
}

/** Writes the last `count` digits of a whole number below 2^31, zeros before it. */
function putDigits(bytes: Uint8Array, at: number, count: number, whole: number): void {
  let rest = whole | 0;
  let end = at + count;
  for (; end >= at + 3; end -= 3) {
    const above = (rest / 1000) | 0;
    putThree(bytes, end - 3, rest - 1000 * above);
    rest = above;
  }
  for (; end > at; end--) {
    bytes[end - 1] = zero + (rest % 10);
    rest = (rest / 10) | 0;
  }
}

function putText(bytes: Uint8Array, at: number, text: string): number {
  for (let i = 0; i < text.length; i++) bytes[at + i] = text.charCodeAt(i);
  return at + text.length;
}

/** The slow way, for what the quick one leaves. */
function putSlowly(bytes: Uint8Array, at: number, value: number, decimals: number): number {
  if (!Number.isFinite(value)) throw new RangeError('the table holds a value that is not finite');
  const text = value.toFixed(decimals);
  return putText(bytes, at, text.startsWith('-') && Number(text) === 0 ? text.slice(1) : text);
}

/** Whether a double that was scaled, and rounded by that, lies so near a half that rounding once more could err. */
function isDoubtful(scaled: number, overHalf: number): boolean {
  const doubt = scaled * 2 ** -52;
  return !(overHalf > doubt || overHalf < -doubt);
}

/** Decimals of nearly all files, and their power of ten. */
const six = 6;
const million = 1e6;

/** Does what `putDecimal` does; the way of nearly all numbers, six decimals of a share of 1, is cut short. */
function putNumber(bytes: Uint8Array, at: number, value: number, decimals: number): number {
  const scaled = value * million;
  const below = scaled | 0;
  const overHalf = scaled - below - 0.5;
  if (decimals !== six || !(scaled >= 0 && scaled < million - 1) || isDoubtful(scaled, overHalf))
    return putDecimal(bytes, at, value, decimals);
  const all = overHalf > 0 ? below + 1 : below;
  const above = (all / 1000) | 0;
  bytes[at] = zero;
  bytes[at + 1] = point;
  putThree(bytes, at + 2, above);
  putThree(bytes, at + 5, all - 1000 * above);
  return at + 8;
}

/** Powers of ten, as exact as a double holds them: all of these. */
const powers = Float64Array.from({ length: 16 }, (_, i) => Number(`1e${i}`));
/** As many digits as `putDigits` takes, whatever they are. */
const digitsAtOnce = 9;
const ninePlaces = 1e9;

/**
 * Writes what `toFixed` gives, which is the decimal nearest to the double itself, the larger of two. The double times a
 * power of ten is off by one rounding; where that could tip the last digit, and for large numbers, `toFixed` decides.
 * What rounds to nothing loses its sign.
 * @returns where the next byte goes
 */
function putDecimal(bytes: Uint8Array, at: number, value: number, decimals: number): number {
  const scale = powers[decimals];
  const scaled = Math.abs(value) * scale;
  const below = Math.floor(scaled);
  const overHalf = scaled - below - 0.5;
  if (isDoubtful(scaled, overHalf)) return putSlowly(bytes, at, value, decimals);
  const all = overHalf > 0 ? below + 1 : below;
  if (value < 0 && all > 0) bytes[at++] = minus;
  let fraction = all % scale;
  at = putText(bytes, at, String((all - fraction) / scale));
  bytes[at++] = point;
  let places = decimals;
  if (places > digitsAtOnce) {
    places -= digitsAtOnce;
    const first = Math.floor(fraction / ninePlaces);
    putDigits(bytes, at, places, first);
    fraction -= first * ninePlaces;
    at += places;
    places = digitsAtOnce;
  }
  putDigits(bytes, at, places, fraction);
  return at + places;
}

/**
 * Rows of three numbers as ASCII bytes, blanks between and a line feed behind, with the text `toFixed` would give; what
 * rounds to nothing has no sign.
 * @param values a whole number of rows
 * @param decimals 1 to 15
 * @param head ASCII text that stands before the rows
 * @throws RangeError for a value that is not finite
 */
export function decimalRows(values: Float64Array, decimals: number, head = ''): Uint8Array {
  let bytes: Uint8Array = new Uint8Array(head.length + values.length * (decimals + 3) + longestRow);
  let at = putText(bytes, 0, head);
  for (let i = 0; i < values.length; i += 3) {
    if (at + longestRow > bytes.length) bytes = larger(bytes, at);
    at = putNumber(bytes, at, values[i], decimals);
    bytes[at++] = blank;
    at = putNumber(bytes, at, values[i + 1], decimals);
    bytes[at++] = blank;
    at = putNumber(bytes, at, values[i + 2], decimals);
    bytes[at++] = lineFeed;
  }
  return bytes.subarray(0, at);
}

function larger(bytes: Uint8Array, used: number): Uint8Array {
  const more = new Uint8Array(Math.ceil(1.5 * bytes.length) + longestRow);
  more.set(bytes.subarray(0, used));
  return more;
}

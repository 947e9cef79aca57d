// Loops over the lines of a picture in planes: codes to red, green and blue and back, four to eight pixels at once.
// Compiled by the build to WebAssembly with 128-bit SIMD. It knows addresses and nothing else: see ../frame-through.ts.
// A line is numbers of 32-bit floats, with room for `lineRoom` bytes before and behind: what lies there may be read and
// written, and means nothing unless it is said.

export { linesToRgb, readLine, spreadToRgb } from './read';
export { gatherCodes, gatherLines, rgbToLines, writeLine } from './write';

/** Bytes that every line, and every run of pixels and codes that is read, has behind it; lines have them before, too. */
export const lineRoom: i32 = 64;

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

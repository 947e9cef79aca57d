/**
 * Capture arithmetic. Shutter rows: arithmetic (flicker = blades x speed). 16 2/3 fps with three blades against 25 fps
 * is amateur practice, found in a film-makers' federation journal. Footage follows from 80, 72 and 40 frames a foot.
 */

/** blades, film fps, camera fps, flicker Hz, x of the exposure 1/x s, beat Hz */
export const shutterRows = [
  [3, 18, 25, 54, 54, 4],
  [3, 50 / 3, 25, 50, 50, 0],
  [3, 16, 25, 48, 48, 2],
  [3, 20, 30, 60, 60, 0],
  [3, 24, 25, 72, 72, 3],
  [2, 25, 25, 50, 50, 0],
  [2, 24, 25, 48, 48, 2],
  [2, 18, 25, 36, 36, 11],
  [5, 20, 50, 100, 100, 0],
  [3, 50 / 3, 50, 50, 50, 0],
  [3, 18, 50, 54, 54, 4],
  [3, 24, 24, 72, 72, 0],
] as const;

/** gauge, feet, frames, fps, minutes and seconds */
export const runningTimeRows = [
  ['super8', 50, 3600, 18, '3:20'],
  ['super8', 50, 3600, 24, '2:30'],
  ['super8', 200, 14400, 18, '13:20'],
  ['super8', 400, 28800, 18, '26:40'],
  ['8mm', 50, 4000, 16, '4:10'],
  ['8mm', 50, 4000, 18, '3:42'],
  ['8mm', 200, 16000, 16, '16:40'],
  ['16mm', 100, 4000, 16, '4:10'],
  ['16mm', 100, 4000, 24, '2:47'],
  ['16mm', 400, 16000, 24, '11:07'],
] as const;

/** Mbit/s, GB a minute (common practice, by arithmetic) */
export const dataRateRows = [
  [100, 0.75],
  [200, 1.5],
  [400, 3],
  [500, 3.75],
  [1600 / 3, 4],
  [600, 4.5],
] as const;

/** gauge, frames in a metre to two decimals */
export const framesPerMetreRows = [
  ['8mm', 262.47],
  ['super8', 236.22],
  ['16mm', 131.23],
] as const;

/** UHD, 4:2:2, 10 bit, 25 fps, uncompressed, Mbit/s */
export const uncompressedUhd = 4147.2;

/** Perforation pitch in mm: Super 8 SMPTE 149-2004; 8 mm and 16 mm from memory (0.150 and 0.3000 in). */
export const pitchMm = { '8mm': 3.81, super8: 4.234, '16mm': 7.62 } as const;

import { makePicture } from './picture.js';
import type { Picture } from './picture.js';

/** A colour to draw with: three bytes of the picture drawn into. */
export type Ink = readonly [red: number, green: number, blue: number];

/** A rectangle in pixels, from its top left corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** An 8-bit RGB picture of one colour. Drawing below works on such pictures, in place; what falls outside is left out. */
export function makeCanvas(width: number, height: number, ink: Ink): Picture {
  const canvas = makePicture(width, height, { channels: 3, bits: 8 });
  fillBox(canvas, { x: 0, y: 0, width, height }, ink);
  return canvas;
}

/** Lays ink over one pixel. @param share 0 (nothing) to 1 (the ink alone), of code values */
export function blendPixel(canvas: Picture, x: number, y: number, ink: Ink, share: number): void {
  if (x < 0 || y < 0 || x >= canvas.width || y >= canvas.height) return;
  const at = 3 * (y * canvas.width + x);
  for (let c = 0; c < 3; c++) canvas.data[at + c] += Math.round(share * (ink[c] - canvas.data[at + c]));
}

export function fillBox(canvas: Picture, { x, y, width, height }: Box, ink: Ink, share = 1): void {
  for (let row = y; row < y + height; row++)
    for (let column = x; column < x + width; column++) blendPixel(canvas, column, row, ink, share);
}

/** Lays an 8-bit RGB or RGBA picture over the canvas, its top left corner at x, y. */
export function placePicture(canvas: Picture, picture: Picture, x: number, y: number): void {
  const { width, height, channels, data } = picture;
  for (let row = 0, at = 0; row < height; row++)
    for (let column = 0; column < width; column++, at += channels) {
      const share = channels === 4 ? data[at + 3] / 255 : 1;
      blendPixel(canvas, x + column, y + row, [data[at], data[at + 1], data[at + 2]], share);
    }
}

import type { Ink } from '../../src/picture/canvas.js';
import type { Picture } from '../../src/picture/picture.js';

/** Colours of a plot that are easily told apart in tests. */
export const style = {
  bed: [0, 0, 0] as Ink,
  gutter: [50, 50, 50] as Ink,
  inks: [
    [255, 0, 0],
    [0, 255, 0],
    [0, 0, 255],
  ] as [Ink, Ink, Ink],
  greyInk: [200, 200, 200] as Ink,
  lineInk: [255, 255, 255] as Ink,
};

/** Pixels of a plot as [x, y, red, green, blue], row by row. */
export function pixelsOf({
  width,
  data,
}: Picture): [x: number, y: number, r: number, g: number, b: number][] {
  return Array.from({ length: data.length / 3 }, (_, i) => [
    i % width,
    Math.floor(i / width),
    data[3 * i],
    data[3 * i + 1],
    data[3 * i + 2],
  ]);
}

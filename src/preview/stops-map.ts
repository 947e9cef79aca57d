import { fillBox, makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from './palette.js';
import { drawRing } from './reel-report/shapes.js';
import type { LegendEntry } from './report-sheet.js';
import { drawText, type TextStyle, textWidth } from './text.js';
import type { LabelFonts } from './typeface.js';

/** How light falls off over a field. */
export interface StopsMap {
  /** Stops against the brightest part, row by row from the top left, and how many to a row. Not empty. */
  readonly stops: ArrayLike<number>;
  readonly across: number;
  /** Middle of the brightest part, as shares of the field's sides. */
  readonly hotSpot: { readonly across: number; readonly down: number };
  /** Words at the corners: top left, top right, bottom left, bottom right. */
  readonly corners: readonly [string, string, string, string];
}

/** Stops below the brightest part from which a place has the next darker shade. */
const shades = [0.1, 0.25, 0.5, 1] as const;

const lightToDark = [...palette.difference].reverse();
const shadeOf = (stops: number) => lightToDark[shades.filter((from) => -stops >= from).length];

/** What the shades of {@link drawStopsMap} mean. */
export const stopsLegend: readonly LegendEntry[] = lightToDark.map((bed, i) => ({
  bed,
  text:
    i === 0
      ? `within ${shades[0]} stop`
      : i === shades.length
        ? `${shades[i - 1]} or more darker`
        : `${shades[i - 1]} to ${shades[i]}`,
}));

/** Stops at a place of the field, in proportion between the four middles around it; on in a line towards its border. */
function stopsAt({ stops, across }: StopsMap, x: number, y: number): number {
  const down = stops.length / across;
  const [column, row] = [x * across - 0.5, y * down - 0.5];
  const before = (place: number, count: number) => Math.max(0, Math.min(count - 2, Math.floor(place)));
  const [left, top] = [before(column, across), before(row, down)];
  const [right, bottom] = [Math.min(across - 1, left + 1), Math.min(down - 1, top + 1)];
  const along = (line: number) =>
    stops[line * across + left] +
    (column - left) * (stops[line * across + right] - stops[line * across + left]);
  return along(top) + (row - top) * (along(bottom) - along(top));
}

const inset = 10;
const labelHeight = 26;

/** Words on a dark bed, so that they are read on every shade. */
function label(canvas: Picture, style: TextStyle, words: string, x: number, y: number): void {
  const width = Math.ceil(textWidth(style, words)) + 16;
  const left = Math.round(Math.min(canvas.width - width - inset, Math.max(inset, x - width / 2)));
  fillBox(canvas, { x: left, y, width, height: labelHeight }, palette.bed);
  drawText(canvas, style, words, { x: left + 8, baseline: y + 19, ink: palette.text });
}

/**
 * A field as steps of stops below its brightest part, which is ringed, with figures in the corners.
 * @returns 8-bit RGB of the size asked for, at least 200 x 120 for its words
 */
export function drawStopsMap(
  map: StopsMap,
  { width, height }: { readonly width: number; readonly height: number },
  fonts: LabelFonts,
): Picture {
  const canvas = makeCanvas(width, height, palette.bed);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const shade = shadeOf(stopsAt(map, (x + 0.5) / width, (y + 0.5) / height));
      canvas.data.set(shade, 3 * (y * width + x));
    }
  const style: TextStyle = { faces: fonts.regular, sizePx: 18 };
  map.corners.forEach((words, i) =>
    label(canvas, style, words, i % 2 === 0 ? 0 : width, i < 2 ? inset : height - labelHeight - inset),
  );
  const spot = { x: map.hotSpot.across * width, y: map.hotSpot.down * height };
  drawRing(canvas, spot, 15, 3, palette.bed);
  // Not where the labels of the corners are.
  const below = Math.min(height - 2 * (labelHeight + inset), Math.max(labelHeight + 2 * inset, spot.y + 20));
  label(canvas, style, 'brightest', spot.x, Math.round(below));
  return canvas;
}
